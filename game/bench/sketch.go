package bench

import (
	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/geom"
	"leafwright/geom/survey"
)

var things = map[game.Thing]draw.Thing{
	game.OnOpening: draw.TheOpening, game.OnLeaf: draw.TheLeaf, game.OnHung: draw.TheHung, game.OnFloor: draw.TheFloor,
	game.OnHinge: draw.TheHung, game.OnJamb: draw.TheOpening, game.OnEdge: draw.TheLeaf,
}

var tools = map[game.Tool]draw.Tool{
	game.AlongTape: draw.Tape, game.AlongLevel: draw.Level, game.AlongEdge: draw.Straightedge, game.AlongStick: draw.Stick,
	game.AlongCord: draw.Cord, game.AlongBlade: draw.Blade, game.AtFeeler: draw.Place, game.AtRule: draw.Place,
}

// closeUps are the kinds of reading that are seen in a close-up only.
var closeUps = map[survey.Kind]draw.CloseUp{
	survey.GapRead: draw.GapNear, survey.Rub: draw.RubNear, survey.StopGap: draw.StopNear,
	survey.RebateDepth: draw.RebateNear, survey.StopWidth: draw.StopWidthNear,
	survey.LeafThickness: draw.ThickNear, survey.LeafBevel: draw.BevelNear,
	survey.HingeProud: draw.StandNear, survey.LatchProud: draw.StandNear,
	survey.LeafGain: draw.LeafGainNear, survey.JambGain: draw.JambGainNear,
	survey.LeafPacker: draw.LeafPackerNear, survey.JambPacker: draw.JambPackerNear,
	survey.HingeClosed: draw.FoldedNear, survey.HingePin: draw.PinNear, survey.HingePlate: draw.PlateNear,
}

// lies are the kinds whose tool lies beside the edge it is laid against.
var lies = map[survey.Kind]draw.Lie{
	survey.JambPlumb: draw.Inside, survey.FrameBow: draw.Inside, survey.HeadSlope: draw.Inside,
	survey.HingeOnJamb: draw.Inside, survey.HingeFromHead: draw.Inside,
	survey.HingeOnLeaf: draw.Inside, survey.HingeFromTop: draw.Inside, survey.LatchHeight: draw.Inside,
	survey.StileBow: draw.Inside, survey.JambPlumbAcross: draw.Outside, survey.FrontBow: draw.Outside,
	survey.LeafBow: draw.Outside, survey.LeafSquare: draw.Outside,
}

// sketch gives the small picture of where a reading is taken.
func sketch(job *game.Job, p *game.Picture) draw.Sketch {
	k := draw.Sketch{Of: things[p.On], Width: p.Width, Height: p.Height, Near: closeUps[p.Kind], RightHung: job.Hand == game.Right}
	for i := range job.Door.Hinges {
		h := &job.Door.Hinges[i]
		switch {
		case k.Of == draw.TheFloor:
		case p.On == game.OnOpening || p.On == game.OnJamb:
			k.Hinges = append(k.Hinges, h.JambHeight)
		default:
			k.Hinges = append(k.Hinges, h.LeafHeight)
		}
	}
	switch p.Kind {
	case survey.StileWidth, survey.RailHeight, survey.RailWidth: // laid on the leaf's own members
		a := &job.Anatomy
		for i := 1; i < len(a.Rails); i++ {
			k.Panels = append(k.Panels, [2]draw.Pt{{X: a.HangingStile, Y: a.Rails[i-1].To}, {X: p.Width - a.ClosingStile, Y: a.Rails[i].From}})
		}
	}
	at := func(v geom.Vec) draw.Pt { return draw.Pt{X: v.X, Y: v.Y} }
	for _, m := range p.Marks {
		if k.Near != draw.NoCloseUp {
			k.Spot = at(m.From)
			continue
		}
		k.Laid = append(k.Laid, draw.Laid{Tool: tools[m.Tool], From: at(m.From), To: at(m.To), Lie: lies[p.Kind]})
	}
	return k
}
