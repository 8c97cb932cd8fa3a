package hardware

// RatedLeaf stands where hanging, repairs and work are told of other leaves.
const RatedLeaf = "This leaf is rated or labelled. What it hangs on, how its bad places are mended, what paint and season leave of its gaps and what may be done to it at all is laid down by its certificate: ask whoever holds it. None of that is worked out here."
