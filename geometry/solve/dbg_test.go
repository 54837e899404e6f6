package solve
import ("testing";"slatwright/specs/unit";"fmt";"time")
func TestDbg(t *testing.T){
 for _,o:=range []rackOptions{{width: 42 * unit.Inch, height: 42 * unit.Inch, columns: 12},{width: 42 * unit.Inch, height: 42 * unit.Inch, depth: 10 * unit.Inch}} {
 r:=newTestRack(o)
 e:=r.engine()
 dbg=func(s string){fmt.Println(s)}
 t0:=time.Now()
 s:=e.best(r.ask(r.allOn(),e.tables))
 fmt.Println(time.Since(t0), s.Counts,s.Optima)
 }
 dbg=nil
}
