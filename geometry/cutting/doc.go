// Package cutting plans how boards are cut into parts. In goes a Job: the
// parts wanted with their orders and marks, the boards that can be bought or
// lie in the rack, and the shop's allowances. Out comes a Plan: boards to buy,
// a layout for each, the settings and the cutting order. The cut command and
// the cutting sheets read it next. The package knows no racks.
//
// A plan has three stages. A board is cut across into sections, a section is
// ripped into strips, a strip is cut across into parts. A kerf is lost between
// neighbours at each stage, EndTrim at each end of a board, EdgeTrim at each
// edge of a section that is ripped. A part as wide as its board keeps both
// edges and needs no rip. The grain of every part runs along the board.
//
// Cost comes first, then the number of settings, then the length of the
// offcuts. Parts that no board is wide enough for are glued up from staves, in
// whichever way is cheapest; the bound holds over all ways that are weighed.
//
// The files, in the order in which a job passes through them:
//
//	demand, instance, subset     the job as kinds of part, ways to use boards, whole numbers
//	solve, separate              which method, choice by choice; orders by themselves
//	search, price, tables        the linear program over all patterns and its safe bound
//	master, formable, tops       the simplex method; totals that prices can add up to;
//	                             how glued-up parts are made
//	lift, choose                 the bound raised by looking at whole boards
//	rest, guide, exact           the exact method for a demand that is small enough:
//	enumerate, boards, box         every pattern that can be in a better plan,
//	shortest                       then the cheapest way through the open demand
//	large, dive, fix, proper     plans for large demands: patterns are fixed one by one
//	improve                      the poorest boards planned anew
//	layout, settle, finish       real sizes, fewest settings, parts handed out
//	steps                        the cutting order with its cautions
//
// Floating point only proposes prices and patterns. Bounds are recomputed in
// whole numbers, so that Plan.Bound holds whatever the linear program did.
package cutting
