package cutting

// cautions are those of any workshop; they claim to be neither complete nor
// enough.
var cautions = []string{
	"Cutters: wear eye protection; keep sleeves, hair, cords and gloves away from what turns; stop the spindle before you reach in, measure or brush.",
	"Clamps: a blank that turns or lifts under the cutter is thrown. Hold it on a mandrel that fits its bore, back thin ones up, and lock the dividing head for every cut; try a whole round of indexing on scrap.",
	"Edges: break those of teeth and rims, thin wheels cut the hand.",
	"Brass swarf flies as needles and is sharp: brush it, never wipe it by hand or blow it. Leaded brass: wash your hands before you eat.",
	"Chains, meshes and arms pinch, slow ones too: switch the drive off and unplug it before you reach in, and guard what visitors can reach.",
	"Mains adapters: keep mains out of the model, feed it from an approved low-voltage adapter; leave mains wiring to those licensed for it.",
	"Lamps get hot, and so do the parts round them: leave air about them, keep wood, paint and fingers away.",
	"Small parts, loose balls and cut-off pieces: keep them from young children.",
	"Local rules, the makers' instructions for machines and tools, and licensed practice come before anything in this list. It gives figures; it does not certify that anything is safe.",
}

// fineModule is the module in mm below which metric cutters are commonly ground
// deeper.
const fineModule = 1.25

// notes says what the figures stand on.
func (l *List) notes(dividing bool) {
	fine, cycloidal := false, false
	for i := range l.Wheels {
		w := &l.Wheels[i]
		fine = fine || w.ByCutter && w.Form == "involute" && w.Module > 0 && w.Module < fineModule
		cycloidal = cycloidal || w.Form == "cycloidal"
	}
	l.Notes = append(l.Notes, "Depths are the spec's addendum and dedendum, from the diameter to turn; the mark on the cutter comes first.")
	if fine {
		l.Notes = append(l.Notes, "Metric cutters below module 1.25 are commonly ground to a depth of 2.4 modules (metrication.com): cut by the tooth's thickness then, not by the depth.")
	}
	if cycloidal {
		l.Notes = append(l.Notes, "Cycloidal sizes are for the pair as meshed (BS 978-2, from memory); makers' cutters may ask for other blanks.")
	}
	l.Notes = append(l.Notes, "Numbers are those of sets of eight with 1 for the rack, in brackets those of metric sets that count the other way; letters are those of cycloidal sets. The range of teeth is what counts.")
	if !dividing {
		l.Notes = append(l.Notes, "The design gives no dividing head, so that no indexing is said.")
	}
}
