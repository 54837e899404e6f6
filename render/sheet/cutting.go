package sheet

func cuttings(in Input) []*page { return nil }
