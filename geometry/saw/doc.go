// Package saw takes solved racks to the saw. In go one or several racks with
// their designs; out comes a Plan: what the boards are, how they are cut, which
// order every piece is for, in which order the pieces come off the saw, what
// the boards weigh and how well they are used. The cut command, the cutting
// sheets, the labels and the shopping list read it next. How a board is cut
// best is package cutting's affair.
package saw
