package solve
import ("testing";"slatwright/specs/unit";"fmt";"time")
func TestDbg(t *testing.T){
 var tot,mx time.Duration; n:=0; var at rackOptions; hard:=0
 for w:=20*unit.Inch; w<44*unit.Inch; w+=unit.Inch*5/2 { for c:=4;c<=12;c++ { for _,rows:=range []int{0,8} {
 o:=rackOptions{width: w, height: 42 * unit.Inch, columns: c, rows:rows}
 r:=newTestRack(o)
 e:=r.engine()
 if _,f:=r.ask(r.allOn(),e.tables).run(); f==nil {continue}
 t0:=time.Now()
 func(){ defer func(){ if recover()!=nil {hard++}}()
 e.best(r.ask(r.allOn(),e.tables))}()
 d:=time.Since(t0); tot+=d; n++; if d>mx {mx=d; at=o}
 }}}
 fmt.Println(n,tot/time.Duration(n),mx,at,hard)
}
