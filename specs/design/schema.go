package design

// entry is a key of a section, with what reads its value.
type entry struct {
	name string
	read func(r *reader, path string, n *node)
}

// section is a table of the file with the keys that may stand in it. The one
// of the name "" is the top of the file.
type section struct {
	name    string
	entries []entry
}

// title returns the section's name as a reader of the file knows it.
func (s section) title() string {
	switch s.name {
	case "column", "column.row", "board":
		return "[" + s.name + "]"
	case "bottle":
		return "bottle.NAME"
	}
	return s.name
}

// The limits of counts: more columns or rows than any rack has.
const (
	MaxColumns = 400
	MaxRows    = 200
)

// sections returns the whole schema, in the order of the documentation.
func sections() []section {
	return []section{
		{"", topEntries()},
		{"site", append(each(site, "width", "height", "depth"), append(each(siteFit, "fit"), each(siteExact, "ceiling", "doorway")...)...)},
		{"rack", append([]entry{{"columns", countTo(MaxColumns)}, {"rows", countTo(MaxRows)}}, each(positive, "width", "depth", "height")...)},
		{"carcase", each(positive, "width", "depth", "height")},
		{"ladder", each(positive, "pitch")},
		{"cell", append(each(positive, "gap", "channel", "rise"), each(anyLength, "side_clearance", "top_clearance", "apron_clearance")...)},
		{"leg", append(each(positive, "thickness", "width", "length"), entry{"stock", stock})},
		{"slat", append(each(positive, "thickness", "height", "length"), append(each(anyLength, "first", "eased"), entry{"stock", stock})...)},
		{"apron", append(each(positive, "thickness", "height", "length"), append(each(anyLength, "lift"), entry{"stock", stock})...)},
		{"top", append(each(positive, "thickness", "length", "width"), entry{"stock", stock}, entry{"present", topPresent})},
		{"overhang", each(anyLength, "side", "front", "back")},
		{"bottles", []entry{{"fit", rackFit}}},
		{"bottle", each(known, "diameter", "height", "body", "mass")},
		{"column", each(known, "count", "fit", "rows", "rise", "gap", "row")},
		{"column.row", each(known, "fit", "rise")},
		{"wood", []entry{{"species", species}, {"humidity", humidity}, {"moisture", moisture}, {"sawn", sawn}}},
		{"board", each(known, "nominal", "length", "price", "on_hand", "thickness", "width")},
		{"shop", append(each(shopLength, "kerf", "end_trim", "edge_trim", "min_rip_length", "tolerance"), entry{"spares", spares})},
		{"joint", append(each(jointNail, "slat_nail", "apron_nail", "top_nail"), entry{"glue", jointGlue}, entry{"top", jointTop})},
		{"finish", []entry{{"coat", finishCoat}, {"coats", finishCoats}, {"stain", finishStain}, {"colour", finishColour}, {"conditioner", finishConditioner}, {"glue", finishGlue}}},
		{"price", priceEntries()},
		{"carton", []entry{{"padding", cartonPadding}, {"divisor", cartonDivisor}}},
		{"paper", []entry{{"drawings", paperDrawings}, {"template", paperTemplate}, {"labels", paperLabels}, {"second_unit", paperSecond}}},
		{"printer", each(printerRuler, "across", "along")},
		{"labels", append(each(known, append([]string{"grid", "first"}, ownSheet...)...), entry{"cut", labelsCut})},
	}
}

// entriesOf returns the entries of the section.
func entriesOf(name string) []entry {
	for _, s := range sections() {
		if s.name == name {
			return s.entries
		}
	}
	panic("design: no section " + name)
}

// each makes one entry of each name, all read alike.
func each(read func(*reader, string, *node), names ...string) []entry {
	var list []entry
	for _, name := range names {
		list = append(list, entry{name, read})
	}
	return list
}

// topEntries are the keys at the top of the file, the tables among them.
func topEntries() []entry {
	list := []entry{
		{"title", func(r *reader, p string, n *node) { r.d.Title, _ = r.says(p, n) }},
		{"order", func(r *reader, p string, n *node) { r.d.Order, _ = r.says(p, n) }},
		{"customer", func(r *reader, p string, n *node) { r.d.Customer, _ = r.says(p, n) }},
		{"date", titleDate},
		{"revision", func(r *reader, p string, n *node) { r.d.Revision, _ = r.says(p, n) }},
		{"units", func(*reader, string, *node) {}}, // read before all else
		{"grid", grid},
		{"where", relations},
		{"measured", measured},
		{"bottle", bottles},
		{"column", columns},
		{"board", boards},
		{"finish", finishes},
		{"labels", labels},
	}
	for _, name := range []string{
		"site", "rack", "carcase", "ladder", "cell", "leg", "slat", "apron", "top", "overhang",
		"bottles", "wood", "shop", "joint", "price", "carton", "paper", "printer",
	} {
		list = append(list, entry{name, func(r *reader, path string, n *node) { r.table(n, path, name) }})
	}
	return list
}

// LengthNames returns the names of all lengths that a statement can be about,
// columns' own ones apart, in the order of the documentation.
func LengthNames() []string {
	return []string{
		"site.width", "site.height", "site.depth", "site.fit", "site.ceiling", "site.doorway",
		"rack.width", "rack.depth", "rack.height", "carcase.width", "carcase.depth", "carcase.height",
		"ladder.pitch", "cell.gap", "cell.channel", "cell.rise",
		"cell.side_clearance", "cell.top_clearance", "cell.apron_clearance",
		"leg.thickness", "leg.width", "leg.length",
		"slat.thickness", "slat.height", "slat.length", "slat.first", "slat.eased",
		"apron.thickness", "apron.height", "apron.length", "apron.lift",
		"top.thickness", "top.length", "top.width", "overhang.side", "overhang.front", "overhang.back",
	}
}

func positive(r *reader, path string, n *node)  { r.state(path, n, false) }
func anyLength(r *reader, path string, n *node) { r.state(path, n, true) }

// state reads a statement about a length of the model.
func (r *reader) state(path string, n *node, zero bool) {
	if l, ok := r.length(path, n, zero); ok {
		r.d.Lengths = append(r.d.Lengths, l)
	}
}

func countTo(most int) func(*reader, string, *node) {
	return func(r *reader, path string, n *node) { r.count(path, n, most) }
}

// tables reads a list of tables, [[path]], giving each to read with its number
// from 1.
func (r *reader) tables(path string, n *node, read func(i int, n *node)) {
	if n.shape != array {
		r.fault(n.at, "write [["+path+"]]", "`%s` is a list of tables, not %s", path, n.shape)
		return
	}
	for i, k := range n.kids {
		if k.shape != tree {
			r.fault(k.value, "write [["+path+"]]", "`%s` is a list of tables, not of %s", path, k.shape)
			continue
		}
		read(i+1, k)
	}
}

// known is the read of a key that its table's reader fetches by name.
func known(*reader, string, *node) {}
