"""Life of one hub by ISO 281, worked out apart from the service: prints what test/rules/history/hub-lives.test.ts expects.

3,500 lb on an axle; hub = half of it, times 1.2 for rough service; inner cone 0.7, outer 0.5 of the hub's load.
Cones L68149 (C1 45,500 N, K 1.40) and L44649 (C90 7,210 N, K 1.56); induced thrust 0.47 F / K; set exponent 9/8.
Tire 205/75R15 at 0.97 of its radius.
"""
from math import pi

LBF = 4.4482216152605
hub = 3500 / 2 * 1.2 * LBF
inner, outer = 0.7 * hub, 0.5 * hub
push_inner, push_outer = 0.47 * inner / 1.40, 0.47 * outer / 1.56
assert push_inner > push_outer
p_inner, p_outer = inner, max(outer, 0.4 * outer + 1.56 * push_inner)
l_inner = 1e6 * (45500 / p_inner) ** (10 / 3)
l_outer = 90e6 * (7210 / p_outer) ** (10 / 3)
together = (l_inner ** (-9 / 8) + l_outer ** (-9 / 8)) ** (-8 / 9)
radius_in = 0.97 * (15 + 2 * 205 * 0.75 / 25.4) / 2
turns_a_mile = 63360 / (2 * pi * radius_in)
print("hub lbf", hub / LBF, "outer lbf", p_outer / LBF)
print("L10 inner, outer, together (million)", l_inner / 1e6, l_outer / 1e6, together / 1e6)
print("turns a mile", turns_a_mile, "miles", together / turns_a_mile)
