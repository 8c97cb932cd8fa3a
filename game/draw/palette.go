package draw

import "image/color"

// Palette says how each ink looks. A verdict's colour always comes with a hatch,
// a weight or a sign of its own, so that a grey print still reads.
type Palette [Inks]color.NRGBA

// rgb gives the opaque colour written 0xRRGGBB.
func rgb(hex uint32) color.NRGBA {
	return color.NRGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: 255}
}

// Day is the palette for a bright room: dark lines on warm paper.
var Day = Palette{
	Paper: rgb(0xf7f3eb), Opening: rgb(0xfffdf9),
	Wall: rgb(0xece6da), WallHatch: rgb(0xcfc6b3), Lining: rgb(0xf0e2c8),
	Timber: rgb(0xe3c79b), Sunk: rgb(0xd3b382), Raised: rgb(0xe9d1a9),
	Grain: rgb(0xcdaa76), Shoulder: rgb(0x7a5c34),
	Glass: rgb(0xdfe9e8), Glint: rgb(0xffffff),
	Line: rgb(0x2b2a28), Fine: rgb(0x8d8677), Datum: rgb(0x3b6f94),
	Metal: rgb(0xa7a49c), Iron: rgb(0x35332f), Brass: rgb(0xcda24a),
	BindFill: rgb(0xc2370a), BindHatch: rgb(0xfff3ea),
	TightFill: rgb(0xfbdf9b), TightHatch: rgb(0x9a5b00),
	SlackFill: rgb(0xd9e7f7), SlackHatch: rgb(0x2a5f9e),
	Ghost: rgb(0xa89c86), SwingArc: rgb(0x7a6a50),
	Handle: rgb(0x2b2a28), HandleSign: rgb(0xfffdf9), ToolFill: rgb(0xf5c51f),
	TextInk: rgb(0x2b2a28), TextMuted: rgb(0x5d574b),
	TextBind: rgb(0xab2f08), TextTight: rgb(0x7f4b00), TextSlack: rgb(0x1d4e89),
}

// Night is the palette for a dark room: light lines on a dark sheet.
var Night = Palette{
	Paper: rgb(0x1b1c1f), Opening: rgb(0x0f1012),
	Wall: rgb(0x27282b), WallHatch: rgb(0x45464a), Lining: rgb(0x4d4433),
	Timber: rgb(0x75603f), Sunk: rgb(0x5f4d31), Raised: rgb(0x806a47),
	Grain: rgb(0x8c754f), Shoulder: rgb(0xd2b98d),
	Glass: rgb(0x39494d), Glint: rgb(0x7f9599),
	Line: rgb(0xe9e4da), Fine: rgb(0x8f8a80), Datum: rgb(0x74b3dd),
	Metal: rgb(0x6a6b6e), Iron: rgb(0x141414), Brass: rgb(0xd9b565),
	BindFill: rgb(0xff7043), BindHatch: rgb(0x2a0d02),
	TightFill: rgb(0x5a4410), TightHatch: rgb(0xf3bf4f),
	SlackFill: rgb(0x1c3350), SlackHatch: rgb(0x86b8f0),
	Ghost: rgb(0x76705f), SwingArc: rgb(0xa89a7c),
	Handle: rgb(0xf1ece2), HandleSign: rgb(0x1b1c1f), ToolFill: rgb(0x8a6a00),
	TextInk: rgb(0xf1ece2), TextMuted: rgb(0xb3ada1),
	TextBind: rgb(0xff9a78), TextTight: rgb(0xf3c566), TextSlack: rgb(0x9cc7f5),
}

// Print is the palette for paper: white ground, tints light enough to copy.
var Print = Palette{
	Paper: rgb(0xffffff), Opening: rgb(0xffffff),
	Wall: rgb(0xf4f4f2), WallHatch: rgb(0xb9b7b1), Lining: rgb(0xf3ecdf),
	Timber: rgb(0xf2e6cf), Sunk: rgb(0xe6d6b8), Raised: rgb(0xf7eedd),
	Grain: rgb(0xd5bf98), Shoulder: rgb(0x6b5230),
	Glass: rgb(0xeef3f3), Glint: rgb(0xffffff),
	Line: rgb(0x111111), Fine: rgb(0x77736a), Datum: rgb(0x2d6088),
	Metal: rgb(0xbdbbb6), Iron: rgb(0x2b2a28), Brass: rgb(0xdcc08a),
	BindFill: rgb(0xb83208), BindHatch: rgb(0xffffff),
	TightFill: rgb(0xfde9a3), TightHatch: rgb(0x8a5200),
	SlackFill: rgb(0xeaf2fb), SlackHatch: rgb(0x2a5f9e),
	Ghost: rgb(0x8d8677), SwingArc: rgb(0x6f6350),
	Handle: rgb(0x111111), HandleSign: rgb(0xffffff), ToolFill: rgb(0xffdf70),
	TextInk: rgb(0x111111), TextMuted: rgb(0x4d4a43),
	TextBind: rgb(0xa32c06), TextTight: rgb(0x7a4700), TextSlack: rgb(0x1d4e89),
}
