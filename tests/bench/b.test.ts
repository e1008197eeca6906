import { test, inject } from "vitest";
import vm from "node:vm";
test("b", () => {
  const fns = new Map<string, any>();
  class E { constructor(readonly code: string, readonly message?: string) {} }
  const CustomFunctions = { associate: (i: string, f: any) => fns.set(i, f), Error: E, ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" } };
  vm.runInNewContext(inject("functions").code, { CustomFunctions });
  const f = fns.get("DOSE.TARGET"); const id = (a: any) => a;
  const A = Array.from({ length: 10000 }, (_, i) => [5 + i * 1e-4]); const B = Array.from({ length: 10000 }, (_, i) => [0.5 + i * 1e-5]);
  const hand = (a: any[][], b: any[][]) => { const o = new Array(a.length); for (let r = 0; r < a.length; r++) o[r] = [a[r]![0] / b[r]![0]]; return o; };
  const inv = { address: "A1" };
  const med = (g: () => void) => { const t = []; for (let k = 0; k < 41; k++) { const s = performance.now(); g(); t.push(performance.now() - s); } return t.sort((x, y) => x - y)[20]!; };
  const a1 = A.map((x) => [x]); const b1 = B.map((x) => [x]);
  let sink = 0;
  for (let k = 0; k < 3; k++) {
    const h = med(() => { sink += hand(A, B).length; }); const v = med(() => { sink += f(A, B, inv).length; });
    const s = med(() => { for (let i = 0; i < 10000; i++) sink += f(a1[i], b1[i], inv).length; }); const idt = med(() => { for (let i = 0; i < 10000; i++) sink += id(a1[i]).length; });
    console.log(`range ${(v / h).toFixed(2)}  (${h.toFixed(3)} ms hand) single ${(s / idt).toFixed(2)} (${(s * 100).toFixed(1)} ns vs ${(idt * 100).toFixed(1)})`);
  }
});
