# Judges answers of the solver with Z3's plain solver: reads one model with its
# answer per line (JSON), writes one line of complaints per model, "ok" if none.
# It is told nothing about how the answer was found. Every optimum is proven
# anew by asking for something better; Z3's own optimiser is not used, since it
# has reported values that are not optimal.
import itertools, json, sys
from z3 import And, If, Int, Or, Real, RealVal, Solver, Sum, ToReal, sat, unsat

NOTHING = 2**63 - 1


class Question:
    """The model under some statements; a statement may have other limits."""

    def __init__(self, m, on, limits=None, loose=()):
        self.m, self.s = m, Solver()
        self.s.set("timeout", 20000)
        self.x, self.ints = [], []
        for i, l in enumerate(m["Lengths"]):
            if l["Step"] > 0:
                k = Int("k%d" % i)
                self.x.append(ToReal(k) * l["Step"])
                self.ints.append((k, l["Step"]))
            else:
                self.x.append(Real("x%d" % i))
                self.ints.append(None)
            self.s.add(self.x[i] >= l["Lo"], self.x[i] <= l["Hi"])
        self.n = [Int("n%d" % i) for i in range(len(m["Counts"] or []))]
        for n, c in zip(self.n, m["Counts"] or []):
            self.s.add(n >= c["Lo"], n <= c["Hi"])
        for i, st in enumerate(m["Statements"] or []):
            if i in on and i not in loose:
                lo, hi = (limits or {}).get(i, (st["Lo"], st["Hi"]))
                v = self.x[st["Length"]] if st["Length"] >= 0 else self.n[st["Count"]] if st["Count"] >= 0 else None
                if v is not None and st["HasLo"]:
                    self.s.add(v >= lo)
                if v is not None and st["HasHi"]:
                    self.s.add(v <= hi)
        held = lambda owners: all(o in on for o in owners or [])
        for r in m["Relations"] or []:
            if held(r["Owners"]):
                e = self.sum(r["Terms"], r["Const"])
                self.s.add(e == 0 if r["Op"] == 0 else e >= 0)
        for r in m["Rules"] or []:
            if held(r["Owners"]):
                self.rule(r)

    def sum(self, terms, const):
        e = RealVal(const)
        for t in terms:
            if t["Count"] < 0:
                e = e + t["Coef"] * self.x[t["Length"]]
                continue
            c = self.m["Counts"][t["Count"]]
            for v in range(c["Lo"], c["Hi"] + 1):
                e = e + If(self.n[t["Count"]] == v, t["Coef"] * (v + t["Plus"]) * self.x[t["Length"]], RealVal(0))
        return e

    def rule(self, r):
        k, step = self.ints[r["On"]]
        e = self.sum(r["Terms"], r["Const"])
        hi = self.m["Lengths"][r["On"]]["Hi"]
        self.s.add(Or([And(k == v // step, e >= r["Table"][v])
                       for v in range(0, hi + 1, step) if r["Table"][v] != NOTHING]))

    def goals(self):
        dist = lambda v, w: If(v >= w, v - w, w - v)
        for l in self.m["Levels"] or []:
            for wishes, of in ((l["CountWishes"], lambda w: dist(self.n[w["Count"]], w["Want"])),
                               (l["Wishes"], lambda w: dist(self.x[w["Length"]], w["Want"]))):
                if wishes:
                    yield Sum([of(w) for w in wishes])
                    for w in wishes if l["InOrder"] else []:
                        yield of(w)
            if l["Most"]:
                e = RealVal(0)
                for p in l["Most"]:
                    ranges = [range(self.m["Counts"][c]["Lo"], self.m["Counts"][c]["Hi"] + 1) for c in p["Counts"]]
                    for vs in itertools.product(*ranges):
                        v = p["Coef"]
                        for f in vs:
                            v *= f
                        e = e - If(And([self.n[c] == f for c, f in zip(p["Counts"], vs)]), RealVal(v), RealVal(0))
                yield e
            if l["Least"]:
                yield self.sum(l["Least"], 0)
        yield from self.n
        yield from self.x

    def holds(self, *more):
        self.s.push()
        self.s.add(*more)
        r = self.s.check()
        self.s.pop()
        if r == unsat or r == sat:
            return r == sat
        raise TimeoutError

    def best(self, lengths, counts):
        """Complaints if the point given is not the one best point."""
        point = [x == RealVal(v) for x, v in zip(self.x, lengths)] + [n == v for n, v in zip(self.n, counts)]
        self.s.push()
        self.s.add(*point)
        if self.s.check() != sat:
            return ["the point does not hold"]
        model = self.s.model()
        values = [model.eval(g, model_completion=True) for g in self.goals()]
        self.s.pop()
        for i, (g, v) in enumerate(zip(self.goals(), values)):
            if self.holds(g < v):
                return ["goal %d can be less than %s" % (i, v)]
            self.s.add(g == v)
        return []


def judge_conflict(m, problems):
    bad, every = [], range(len(m["Statements"] or []))
    hold = lambda on, limits=None, loose=(): Question(m, set(on), limits, loose).holds()
    left = set(every)
    for p in problems:
        lines = p["Statements"] or []
        if hold(lines):
            bad.append("%s can hold" % lines)
        if not lines:  # the relations alone: nothing more to tell
            return bad
        for s in lines:
            if not hold(set(lines) - {s}):
                bad.append("%s: %d can be left out" % (lines, s))
        for less in itertools.combinations(sorted(left), len(lines) - 1):
            if not hold(less):
                bad.append("%s is smaller than %s" % (less, lines))
        left -= set(lines)
    if not hold(left):
        bad.append("another problem is left")
    for p in problems:
        for ch in p["Changes"] or []:
            bad += judge_change(m, left | set(p["Statements"] or []), ch, hold)
    return bad


def judge_change(m, lines, ch, hold):
    s = ch["Statement"]
    st = m["Statements"][s]
    bad = []
    if hold(lines - {s}) != ch["Helps"]:
        bad.append("statement %d: helps is wrong" % s)
    if not ch["Helps"] or st["Length"] < 0 and st["Count"] < 0:
        return bad
    step, f = max(1, st["RepairStep"]), ch["Free"]
    exact = st["HasLo"] and st["HasHi"] and st["Lo"] == st["Hi"]
    if exact or st["HasHi"]:
        limits = lambda v: (v, v) if exact else (st["Lo"], v)
        bad += nearest(s, range(st["Hi"] // step * step + step, 61, step), f["HasAbove"], f["Above"],
                       lambda v: hold(lines, {s: limits(v)}))
    if exact or st["HasLo"]:
        limits = lambda v: (v, v) if exact else (v, st["Hi"])
        bad += nearest(s, range(-(-st["Lo"] // step) * step - step, -21, -step), f["HasBelow"], f["Below"],
                       lambda v: hold(lines, {s: limits(v)}))
    return bad


def nearest(s, values, has, value, holds):
    for v in values:
        if holds(v):
            return [] if has and v == value else ["statement %d: %d would do, not %s" % (s, v, value if has else None)]
    return ["statement %d: %d does not do" % (s, value)] if has else []


for line in sys.stdin:
    c = json.loads(line)
    m = c["Model"]
    try:
        if c["Solved"]:
            bad = Question(m, set(range(len(m["Statements"] or [])))).best(c["Lengths"], c["Counts"] or [])
        else:
            bad = judge_conflict(m, c["Problems"])
    except TimeoutError:
        bad = ["undecided"]
    print("; ".join(bad) or "ok", flush=True)
