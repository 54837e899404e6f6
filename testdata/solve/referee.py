# Judges answers of the solver with Z3's plain solver: reads one model with its
# answer per line (JSON), writes one line per model: what it has to complain of,
# "ok" if nothing, and the milliseconds that it took Z3 to find an answer itself.
# It is told nothing about how the answer was found. Every optimum is proven
# anew by asking for something better; Z3's own optimiser is not used, since it
# has reported values that are not optimal.
import itertools, json, sys, time
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
        self.s.add(Or([And(k == i, e >= r["Table"][i])
                       for i in range(hi // step + 1) if r["Table"][i] != NOTHING]))

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


def kept(m, lines, st, s):
    """The question without the line's own limit, with each wish that can be had."""
    q = Question(m, lines, loose=(s,))
    def near(w):  # what is wished between two grid lines is had on the nearer one
        step = m["Lengths"][w["Length"]]["Step"]
        return (2 * w["Want"] + step) // (2 * step) * step if step > 1 else w["Want"]
    for l in m["Levels"] or []:
        for wishes, of, own in ((l["CountWishes"], lambda w: q.n[w["Count"]] == w["Want"], lambda w: w["Count"] == st["Count"]),
                                (l["Wishes"], lambda w: q.x[w["Length"]] == near(w), lambda w: w["Length"] == st["Length"])):
            for w in wishes or []:
                if not own(w) and q.holds(of(w)):
                    q.s.add(of(w))
    return q


def judge_change(m, lines, ch, hold):
    s = ch["Statement"]
    st = m["Statements"][s]
    bad = []
    if hold(lines - {s}) != ch["Helps"]:
        bad.append("statement %d: helps is wrong" % s)
    if not ch["Helps"] or st["Length"] < 0 and st["Count"] < 0:
        return bad
    for what, f, q in (("free", ch["Free"], Question(m, lines, loose=(s,))), ("kept", ch["Kept"], kept(m, lines, st, s))):
        v = q.x[st["Length"]] if st["Length"] >= 0 else q.n[st["Count"]]
        bad += ["statement %d, %s: %s" % (s, what, c) for c in judge_nearest(q, v, st, f)]
    return bad


def judge_nearest(q, v, st, f):
    """Complaints if the values named do not do, or nearer ones would."""
    step = max(1, st["RepairStep"]) if st["Length"] >= 0 else 1
    exact = st["HasLo"] and st["HasHi"] and st["Lo"] == st["Hi"]
    on = Int("repair")  # an exact figure must be one that can be typed
    typed = [v == on * step] if exact else []
    bad = []
    if exact or st["HasHi"]:
        low = [v > st["Hi"]] if exact else [v >= st["Lo"]] if st["HasLo"] else []
        if not f["HasAbove"]:
            bad += ["more would do"] if q.holds(*low, *typed) else []
        else:
            at = f["Above"]
            if not q.holds(*low, *typed, v == at if exact else v <= at):
                bad.append("%d does not do" % at)
            if at % step or q.holds(*low, *typed, v < at if exact else v <= at - step):
                bad.append("less than %d would do" % at)
    if exact or st["HasLo"]:
        high = [v < st["Lo"]] if exact else [v <= st["Hi"]] if st["HasHi"] else []
        if not f["HasBelow"]:
            bad += ["less would do"] if q.holds(*high, *typed) else []
        else:
            at = f["Below"]
            if not q.holds(*high, *typed, v == at if exact else v >= at):
                bad.append("%d does not do" % at)
            if at % step or q.holds(*high, *typed, v > at if exact else v >= at + step):
                bad.append("more than %d would do" % at)
    return bad


for line in sys.stdin:
    c = json.loads(line)
    m = c["Model"]
    start = time.monotonic()
    try:
        if c["Solved"]:
            bad = Question(m, set(range(len(m["Statements"] or [])))).best(c["Lengths"], c["Counts"] or [])
        else:
            bad = judge_conflict(m, c["Problems"])
    except TimeoutError:
        bad = ["undecided"]
    print("; ".join(bad) or "ok", "(%d ms)" % (1000 * (time.monotonic() - start)), flush=True)
