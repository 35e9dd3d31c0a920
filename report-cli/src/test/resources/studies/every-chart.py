# Makes every-chart.plan.json and every-chart.csv: a plan that asks for every kind of chart, and made-up readings for it (Python 3.11, seed 7).
import random, json
random.seed(7)
def wr(name, plan_chars, header, rows, job=None):
    plan={"schema":"firstoff-plan-1","part":{"number":"HQ-310-P","name":"Winch drum carrier, port","revision":"C","hand":"port"},"unit":"mm","characteristics":plan_chars}
    json.dump(plan,open(name+".plan.json","w"),indent=1)
    open(name+".csv","w").write("\n".join([",".join(header)]+[",".join(map(str,r)) for r in rows])+"\n")
n=150
chars=[
 {"number":"1","feature":"bore","requirement":"52 ±0.05","study":{"chart":"between-within","subgroup":5}},
 {"number":"2","feature":"depth","requirement":"12.5 ±0.05","study":{"chart":"cusum","fastInitialResponse":True,"centre":"12.5"}},
 {"number":"3","feature":"width","requirement":"8 ±0.05","study":{"chart":"ewma","subgroup":5,"breaks":["tool"]}},
 {"number":"4","feature":"spigot","requirement":"20 ±0.06","study":{"chart":"individuals","trended":True,"breaks":["tool"]}},
 {"number":"5","feature":"step","requirement":"5 ±0.05","study":{"chart":"xbar-s","window":"PT1H","tests":["nelson"],"exclude":[{"part":"P-012","reason":"chip under the part, seen by the operator"}],"breaks":{"at":["tool"],"limits":"recalculate","reason":"new insert after wear, verified by the setter"}}},
 {"number":"6","feature":"flatness","requirement":"flatness 0.08","study":{"chart":"xbar-r","subgroup":5,"distribution":"automatic"}},
 {"number":"7","feature":"height","requirement":"30 ±0.05","study":{"chart":"median-r","subgroup":5,"tests":["unnatural","western-electric-1"],"distribution":"weibull"}},
 {"number":"8","feature":"length","requirement":"40 ±0.05","study":{"chart":"xbar-r","subgroup":5,"limits":{"kind":"xbar-r","centre":"40.002","sigma":"0.008","estimator":"R̄/d2","degreesOfFreedom":"90","unit":"mm","from":"batch B-2206, 25 subgroups"}}},
 {"number":"9","feature":"slot","requirement":"6 ±0.05","study":{"chart":"deviation","subgroup":3,"family":["9","10"]}},
 {"number":"10","feature":"groove","requirement":"9 ±0.08","study":{"chart":"standardised-deviation","subgroup":3,"family":["9","10"]}},
 {"number":"11","feature":"edges","requirement":"visual: no burrs","study":{"chart":"p","window":"PT1H"}},
 {"number":"12","feature":"marking","requirement":"visual: legible","study":{"chart":"np","subgroup":15}},
 {"number":"13","feature":"scratches","requirement":"nonconformities 4 max: scratches","study":{"chart":"c"}},
 {"number":"14","feature":"pores","requirement":"nonconformities 6 max: pores","study":{"chart":"u","dispersion":"observed"}},
]
hdr=["part","time","tool"]+[c["number"] for c in chars]
rows=[]
g=random.gauss
for i in range(n):
    h=6+i//12; m=(i%12)*5
    tool="T%d"%(i//50+1)
    rows.append(["P-%03d"%(i+1),"2026-11-20T%02d:%02d:00Z"%(h,m),tool,
     "%.3f"%(52+random.Random(i//5).gauss(0,.006)+g(0,.004)),
     "%.3f"%(12.5+g(0,.01)+(0.009 if i>100 else 0)),
     "%.3f"%(8+g(0,.01)),
     "%.3f"%(19.975+(i%50)*.001+g(0,.004)),
     "%.3f"%(5+g(0,.008)+(0.008 if i>=50 else 0)),
     "%.3f"%abs(g(0,.018)),
     "%.3f"%(30+g(0,.01)),
     "%.3f"%(40.006+g(0,.008)),
     "%.3f"%(6+g(0,.006)),
     "%.3f"%(9+g(0,.02)+(0.03 if i>130 else 0)),
     "fail" if random.random()<(.08 if i!=90 else 1) else "pass",
     "fail" if random.random()<.1 else "pass",
     min(4,sum(random.random()<.15 for _ in range(10))),
     min(6,sum(random.random()<.2 for _ in range(12)))])
wr("every-chart",chars,hdr,rows)
