//go:build !js

package e2e
import ("testing";"fmt")
func TestZZ(t *testing.T){
	p := open(t, desktop)
	p.openDemo("Weaver's cottage, stair door")
	ask[bool](p, `(document.getElementById('card-value').focus(), true)`)
	for i:=range 6 {
	 evaluate[bool](p, fmt.Sprintf(`new Promise(done=>{const f=document.getElementById('card-value'); f.value='%d'; const s=performance.now(); f.dispatchEvent(new Event('input')); window.total=performance.now()-s; setTimeout(()=>done(true),120)})`, 766+i%2))
	 fmt.Println(ask[float64](p,`window.total`), ask[string](p,`window.laps`))
	}
}
