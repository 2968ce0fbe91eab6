# Values of PCHIP from scipy.interpolate.PchipInterpolator (general-purpose library), for the data of
# F. N. Fritsch and R. E. Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980), table of RPN 15A,
# (points as recalled from memory), and of gauge charts. Usage: python3 pchip.py > pchip.tsv
import math, sys
import numpy as np, scipy
from scipy.interpolate import PchipInterpolator
def seg(r,h): return r*r*math.acos((r-h)/r)-(r-h)*math.sqrt(max(0,2*r*h-h*h))
data = {
 "RPN 15A": ([7.99,8.09,8.19,8.7,9.2,10,12,15,20],[0,2.76429e-5,4.37498e-2,0.169183,0.469428,0.943740,0.998636,0.999919,0.999994]),
 "lying 36 x 60, marks every 4": ([float(h) for h in range(0,37,4)],[60*seg(18,h)/231 for h in range(0,37,4)]),
 "uneven chart": ([1,2,4.5],[10,30,130]),
 "uneven chart of five": ([0,0.25,0.5,0.875,1],[0,31,80,151,160]),
 "level part": ([0,1,2,3,5],[0,4,4,9,9.5]),
 "two marks": ([2,7],[10,60]),
}
print("# made with scipy %s, numpy %s: scipy.interpolate.PchipInterpolator; x, value, slope" % (scipy.__version__, np.__version__))
print("case\tx_marks\ty_marks\tx\tvalue\tslope")
for name,(x,y) in data.items():
    p=PchipInterpolator(x,y); d=p.derivative()
    pts=[]
    for a,b in zip(x,x[1:]):
        pts += [a]+[a+(b-a)*f for f in (0.1,0.37,0.5,0.81)]
    pts.append(x[-1])
    for t in pts:
        print("\t".join([name,",".join(repr(float(v)) for v in x),",".join(repr(float(v)) for v in y),repr(float(t)),repr(float(p(t))),repr(float(d(t)))]))
