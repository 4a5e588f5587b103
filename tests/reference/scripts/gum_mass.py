"""Second-order uncertainty of the mass calibration of JCGM 101:2008, 9.3, by mpmath: the terms of JCGM 100:2008, 5.1.2.

Run: /usr/bin/python3 gum_mass.py > ../gum-mpmath.json
"""
import mpmath as mp
mp.mp.dps=40
f=lambda a,b,c,d,e:(a+b)*(1+(c-mp.mpf('1.2'))*(1/d-1/e))-100000
x=[mp.mpf(100000),mp.mpf('1.234'),mp.mpf('1.2'),mp.mpf(8000),mp.mpf(8000)]
u=[mp.mpf('0.05'),mp.mpf('0.02'),mp.mpf('0.1')/mp.sqrt(3),1000/mp.sqrt(3),50/mp.sqrt(3)]
def d(n): return mp.diff(f,tuple(x),tuple(n))
tot=mp.mpf(0);first=mp.mpf(0)
for i in range(5):
    e=[0]*5;e[i]=1;fi=d(e);first+=(fi*u[i])**2
    for j in range(5):
        e=[0]*5;e[i]+=1;e[j]+=1;fij=d(e)
        e=[0]*5;e[i]+=1;e[j]+=2;t=d(e)
        tot+=(fij**2/2+fi*t)*u[i]**2*u[j]**2
print('{ "mass": { "u_second_order": "%s" } }' % mp.nstr(mp.sqrt(first + tot), 14))
