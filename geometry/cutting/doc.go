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
// offcuts. Small jobs are solved exactly: every pattern worth having of every
// board, then dynamic programming over the demand still open. Larger ones go
// through column generation with a bound that is recomputed in whole numbers,
// so that Plan.Bound holds whatever the linear program did.
package cutting
