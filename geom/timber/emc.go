package timber

// Where the published table of equilibrium moisture stands, °C; beyond it the nearest
// temperature in it counts. Below freezing the moisture hardly changes with temperature.
const (
	coldest = -1.2
	hottest = 100.0
)

// held keeps x between lo and hi; what is not a number counts as lo.
func held(x, lo, hi float64) float64 {
	if !(x > lo) {
		return lo
	}
	return min(x, hi)
}

// square gives a + b·t + c·t², every product rounded by itself.
func square(a, b, c, t float64) float64 {
	return a + float64(b*t) + float64(c*float64(t*t))
}

// Equilibrium gives the moisture content, % of the dry mass, that wood comes to in air
// of that temperature, °C, and relative humidity, %. Temperatures are held to −1.2 to
// 100 °C and humidities to 0 to 100 %. Wood Handbook (FPL-GTR-190, 2010) Eq. 4-5 with
// its Celsius coefficients: fit for practice, the same for every species.
func Equilibrium(celsius, humidity float64) float64 {
	t := held(celsius, coldest, hottest)
	h := held(humidity, 0, 100) / 100
	w := square(349, 1.29, 0.0135, t)
	kh := float64(square(0.805, 0.000736, -0.00000273, t) * h)
	k1 := square(6.27, -0.00938, -0.000303, t)
	k2 := square(1.91, 0.0407, -0.000293, t)
	a := float64(k1 * kh)                                  // K1·K·h
	b := float64(float64(k1*k2) * float64(kh*kh))          // K1·K2·K²·h²
	return float64(1800/w) * (kh/(1-kh) + (a+2*b)/(1+a+b)) // doubling is exact
}

// Humidity gives the relative humidity, %, at which wood of that moisture content, %,
// neither dries nor swells at that temperature, °C: what the air has been like where a
// meter reads so much. It turns [Equilibrium] round, and is held to 0 to 100 %.
func Humidity(celsius, moisture float64) float64 {
	lo, hi := 0.0, 100.0
	for range 60 { // halving 100 % so often leaves nothing to halve
		mid := lo + (hi-lo)/2
		if Equilibrium(celsius, mid) < moisture {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo + (hi-lo)/2
}
