/**
 * Every unit, one line each:
 *
 *     symbol = definition ; aliases ; label for people ; exact | derived ; source
 *
 * A definition is a number (a decimal or a fraction of two) and units defined above it, joined by `.` and `/`. `base X`
 * opens a dimension. `point N of U` is a point on a temperature scale: kelvins = (value + N) x U. An empty label means the
 * symbol itself. `exact` holds by definition of the source; `derived` follows from exact ones without rounding. A
 * symbol with a micro sign is also read with the Greek letter mu.
 *
 * The lines of one dimension stand in the order in which completion should offer them.
 */
export const definitions = `
# length
m = base length ; metre metres meter meters ; ; exact ; SI
mm = 1/1000 m ; MM millimetre millimetres millimeter millimeters ; ; exact ; SI
in = 25.4 mm ; IN inch inches " ″ ” '' ; ; exact ; NIST SP 811 (2008) B.8
thou = 1/1000 in ; mil mils thous thousandth thousandths ; ; derived ; common practice, no source (the name), a thousandth of an inch
um = 1/1000 mm ; µm micron microns micrometre micrometres ; µm ; exact ; SI
tenth_in = 1/10000 in ; ; tenths (in) ; derived ; common practice, no source, a ten-thousandth of an inch
tenth_mm = 1/10 mm ; ; tenths (mm) ; derived ; common practice, no source, a tenth of a millimetre
uin = 1/1000000 in ; µin microinch microinches ; µin ; derived ; NIST SP 811 (2008) B.8
nm = 1/1000 um ; ; ; exact ; SI
cm = 10 mm ; ; ; exact ; SI
dm = 100 mm ; ; ; exact ; SI
km = 1000 m ; ; ; exact ; SI
ft = 12 in ; foot feet ' ′ ’ ; ; exact ; NIST SP 811 (2008) B.8
yd = 3 ft ; yard yards ; ; exact ; NIST SP 811 (2008) B.8
mi = 1760 yd ; mile miles ; ; exact ; NIST SP 811 (2008) B.8

# count, share and angle
rad = base none ; radian radians ; ; exact ; SI
deg = 3.14159265358979323846264338327950288419716939937510/180 rad ; ° degree degrees ; ° ; derived ; NIST SP 811 (2008) table 6
arcmin = 1/60 deg ; ; ′ ; derived ; NIST SP 811 (2008) table 6
arcsec = 1/3600 deg ; ; ″ ; derived ; NIST SP 811 (2008) table 6
mrad = 1/1000 rad ; ; ; exact ; SI
% = 1/100 rad ; percent pct ; ; exact ; ISO 80000-1
permille = 1/1000 rad ; ‰ ; ‰ ; exact ; ISO 80000-1
ppm = 1/1000000 rad ; ; ; exact ; NIST SP 811 (2008) 7.10.3
rev = 1 rad ; ; ; exact ; ISO 80000-3: rotation is a count

# time and frequency
s = base time ; sec second seconds ; ; exact ; SI
min = 60 s ; minute minutes ; ; exact ; NIST SP 811 (2008) table 6
h = 60 min ; hr hour hours ; ; exact ; NIST SP 811 (2008) table 6
ms = 1/1000 s ; ; ; exact ; SI
day = 24 h ; days ; ; exact ; NIST SP 811 (2008) table 6
rpm = 1 rev/min ; RPM r/min ; ; exact ; ISO 80000-3: rotational frequency
Hz = 1/s ; ; ; exact ; SI
kHz = 1000 Hz ; ; ; exact ; SI
1/s = 1/s ; ; ; exact ; SI
1/min = 1/min ; ; ; exact ; SI
rev/s = 1 rev/s ; rps ; ; exact ; ISO 80000-3

# mass
kg = base mass ; KG kilogram kilograms kilo kilos ; ; exact ; SI
g = 1/1000 kg ; gram grams ; ; exact ; SI
mg = 1/1000 g ; ; ; exact ; SI
lb = 0.45359237 kg ; lbs lbm LB LBS pound pounds ; ; exact ; NIST SP 811 (2008) B.8
oz = 1/16 lb ; ounce ounces ; ; exact ; NIST SP 811 (2008) B.8
gr = 1/7000 lb ; grain grains ; ; exact ; NIST SP 811 (2008) B.8
cwt_long = 112 lb ; ; long cwt ; exact ; NIST SP 811 (2008) B.8
cwt_short = 100 lb ; ; short cwt ; exact ; NIST SP 811 (2008) B.8
short_ton = 2000 lb ; short_tons ton_us tons_us ; short ton ; exact ; NIST SP 811 (2008) B.8
long_ton = 2240 lb ; long_tons ton_uk tons_uk ; long ton ; exact ; NIST SP 811 (2008) B.8
tonne = 1000 kg ; t tonnes metric_ton metric_tons ; tonne ; exact ; NIST SP 811 (2008) table 6

# force
N = 1 kg.m/s2 ; newton newtons ; ; exact ; SI
kN = 1000 N ; KN ; ; exact ; SI
MN = 1000 kN ; ; ; exact ; SI
mN = 1/1000 N ; ; ; exact ; SI
lbf = 9.80665 lb.m/s2 ; LBF ; ; derived ; NIST SP 811 (2008) B.8, standard gravity 9.80665 m/s2
kip = 1000 lbf ; kips ; ; derived ; NIST SP 811 (2008) B.8
kgf = 9.80665 N ; kp ; ; exact ; NIST SP 811 (2008) B.8
ozf = 1/16 lbf ; ; ; derived ; NIST SP 811 (2008) B.8
short_tonf = 2000 lbf ; tonf_us ; short tonf ; derived ; NIST SP 811 (2008) B.8
long_tonf = 2240 lbf ; tonf_uk ; long tonf ; derived ; from the long ton and standard gravity
tonnef = 1000 kgf ; ; tonne-force ; exact ; NIST SP 811 (2008) B.8
slug = 1 lbf.s2/ft ; slugs ; ; derived ; NIST SP 811 (2008) B.8

# pressure
Pa = 1 N/m2 ; pascal ; ; exact ; SI
kPa = 1000 Pa ; ; ; exact ; SI
MPa = 1000 kPa ; MPA N/mm2 ; ; exact ; SI
GPa = 1000 MPa ; ; ; exact ; SI
psi = 1 lbf/in2 ; PSI ; ; derived ; NIST SP 811 (2008) B.8
ksi = 1000 psi ; KSI ; ; derived ; NIST SP 811 (2008) B.8
Mpsi = 1000 ksi ; ; ; derived ; NIST SP 811 (2008) B.8
bar = 100 kPa ; bars BAR ; ; exact ; NIST SP 811 (2008) table 9
mbar = 1/1000 bar ; ; ; exact ; NIST SP 811 (2008) table 9
hPa = 100 Pa ; ; ; exact ; SI
atm = 101325 Pa ; ; ; exact ; NIST SP 811 (2008) B.8
kgf/cm2 = 1 kgf/cm2 ; ; ; exact ; NIST SP 811 (2008) B.8
psf = 1 lbf/ft2 ; ; ; derived ; NIST SP 811 (2008) B.8

# torque and energy
N.m = 1 N.m ; Nm NM ; ; exact ; SI
lbf.ft = 1 lbf.ft ; ft-lb lb-ft lbf-ft ft-lbf ftlb lbft ; ; derived ; NIST SP 811 (2008) B.8
lbf.in = 1 lbf.in ; in-lb lb-in lbf-in in-lbf inlb lbin ; ; derived ; NIST SP 811 (2008) B.8
kgf.m = 1 kgf.m ; ; ; exact ; NIST SP 811 (2008) B.8
ozf.in = 1 ozf.in ; in-oz oz-in ; ; derived ; NIST SP 811 (2008) B.8
N.mm = 1 N.mm ; Nmm ; ; exact ; SI
kN.m = 1 kN.m ; kNm ; ; exact ; SI
J = 1 N.m ; joule joules ; ; exact ; SI
kJ = 1000 J ; ; ; exact ; SI
MJ = 1000 kJ ; ; ; exact ; SI
Btu = 1055.05585262 J ; BTU ; ; exact ; NIST SP 811 (2008) B.8, International Table
ft.lbf = 1 ft.lbf ; ; ; derived ; NIST SP 811 (2008) B.8

# power
W = 1 J/s ; watt watts ; ; exact ; SI
kW = 1000 W ; KW ; ; exact ; SI
hp = 550 ft.lbf/s ; HP horsepower ; ; derived ; NIST SP 811 (2008) B.8
hp_metric = 75 kgf.m/s ; ; metric hp ; exact ; NIST SP 811 (2008) B.8
kWh = 1 kW.h ; ; ; exact ; NIST SP 811 (2008) B.8

# area
mm2 = 1 mm2 ; ; ; exact ; SI
in2 = 1 in2 ; sqin ; ; exact ; NIST SP 811 (2008) B.8
cm2 = 1 cm2 ; ; ; exact ; SI
m2 = 1 m2 ; ; ; exact ; SI
ft2 = 1 ft2 ; sqft ; ; exact ; NIST SP 811 (2008) B.8

# volume
L = 1 dm3 ; litre litres liter liters ; ; exact ; NIST SP 811 (2008) table 6
mL = 1/1000 L ; ml cc ; ; exact ; NIST SP 811 (2008) table 6
mm3 = 1 mm3 ; ; ; exact ; SI
cm3 = 1 cm3 ; ; ; exact ; SI
m3 = 1 m3 ; ; ; exact ; SI
in3 = 1 in3 ; cuin ; ; exact ; NIST SP 811 (2008) B.8
ft3 = 1 ft3 ; cuft ; ; exact ; NIST SP 811 (2008) B.8
gal_us = 231 in3 ; ; US gal ; exact ; NIST SP 811 (2008) B.8
gal_imp = 4.54609 L ; gal_uk ; imp gal ; exact ; NIST SP 811 (2008) B.8
qt_us = 1/4 gal_us ; qt ; US qt ; exact ; NIST SP 811 (2008) B.8
qt_imp = 1/4 gal_imp ; ; imp qt ; exact ; from the imperial gallon
pt_us = 1/8 gal_us ; ; US pt ; exact ; NIST SP 811 (2008) B.8
pt_imp = 1/8 gal_imp ; ; imp pt ; exact ; from the imperial gallon
floz_us = 1/128 gal_us ; ; US fl oz ; exact ; NIST SP 811 (2008) B.8

# density
kg/m3 = 1 kg/m3 ; ; ; exact ; SI
lb/in3 = 1 lb/in3 ; ; ; exact ; NIST SP 811 (2008) B.8
g/cm3 = 1 g/cm3 ; ; ; exact ; SI
lb/ft3 = 1 lb/ft3 ; ; ; exact ; NIST SP 811 (2008) B.8

# speed
m/s = 1 m/s ; ; ; exact ; SI
m/min = 1 m/min ; ; ; exact ; SI
mm/s = 1 mm/s ; ; ; exact ; SI
mm/min = 1 mm/min ; ; ; exact ; SI
ft/min = 1 ft/min ; fpm sfm ; ; exact ; NIST SP 811 (2008) B.8
ft/s = 1 ft/s ; ; ; exact ; NIST SP 811 (2008) B.8
in/s = 1 in/s ; ; ; exact ; NIST SP 811 (2008) B.8
in/min = 1 in/min ; ipm ; ; exact ; NIST SP 811 (2008) B.8
mph = 1 mi/h ; ; ; exact ; NIST SP 811 (2008) B.8
km/h = 1 km/h ; kph ; ; exact ; NIST SP 811 (2008) B.8

# flow
L/min = 1 L/min ; lpm ; ; exact ; NIST SP 811 (2008) table 6
gpm_us = 1 gal_us/min ; ; US gpm ; exact ; NIST SP 811 (2008) B.8
gpm_imp = 1 gal_imp/min ; gpm_uk ; imp gpm ; exact ; NIST SP 811 (2008) B.8
cfm = 1 ft3/min ; ; ; exact ; NIST SP 811 (2008) B.8
L/s = 1 L/s ; ; ; exact ; NIST SP 811 (2008) table 6
m3/h = 1 m3/h ; ; ; exact ; SI

# viscosity
Pa.s = 1 Pa.s ; ; ; exact ; SI
mPa.s = 1/1000 Pa.s ; ; ; exact ; SI
poise = 1/10 Pa.s ; ; P ; exact ; NIST SP 811 (2008) table 10
cP = 1/100 poise ; centipoise ; ; exact ; NIST SP 811 (2008) table 10
reyn = 1 lbf.s/in2 ; reyns ; ; derived ; NIST SP 811 (2008) B.8, pound-force second per square inch
m2/s = 1 m2/s ; ; ; exact ; SI
St = 1 cm2/s ; stokes ; ; exact ; NIST SP 811 (2008) table 10
cSt = 1/100 St ; centistokes ; ; exact ; NIST SP 811 (2008) table 10
mm2/s = 1 mm2/s ; ; ; exact ; SI

# temperature: K and degR are differences unless the quantity is a temperature; degC and degF are points when alone
K = base temperature ; kelvin ; ; exact ; SI
degC_diff = 1 K ; Δ°C Cdeg C° ; Δ°C ; exact ; NIST SP 811 (2008) B.8
degF_diff = 5/9 K ; Δ°F Fdeg F° ; Δ°F ; exact ; NIST SP 811 (2008) B.8
degR = 5/9 K ; °R ; °R ; exact ; NIST SP 811 (2008) B.8
degC = point 273.15 of K ; °C C celsius ; °C ; exact ; NIST SP 811 (2008) B.8
degF = point 459.67 of degR ; °F F fahrenheit ; °F ; exact ; NIST SP 811 (2008) B.8

# expansion and conduction
1/K = 1/K ; ; ; exact ; SI
um/(m.K) = 1 um/(m.K) ; ppm/K ; ; exact ; SI
1/degF = 1/degF_diff ; ; ; exact ; NIST SP 811 (2008) B.8
uin/(in.degF) = 1 uin/(in.degF_diff) ; ppm/degF ; ; exact ; NIST SP 811 (2008) B.8
1/degC = 1/degC_diff ; ; ; exact ; SI
W/(m.K) = 1 W/(m.K) ; ; ; exact ; SI
Btu/(h.ft.degF) = 1 Btu/(h.ft.degF_diff) ; ; ; derived ; NIST SP 811 (2008) B.8
W/K = 1 W/K ; ; ; exact ; SI

# stiffness
N/m = 1 N/m ; ; ; exact ; SI
N/mm = 1 N/mm ; ; ; exact ; SI
N/um = 1 N/um ; ; ; exact ; SI
lbf/in = 1 lbf/in ; ; ; derived ; NIST SP 811 (2008) B.8
lbf/thou = 1 lbf/thou ; ; ; derived ; NIST SP 811 (2008) B.8

# bearing load figures
MPa.m/s = 1 MPa.m/s ; ; ; exact ; SI
psi.ft/min = 1 psi.ft/min ; ; ; derived ; NIST SP 811 (2008) B.8

# interference per unit diameter, taper and thread
thou/in = 1 thou/in ; ; ; exact ; a thousandth
um/mm = 1 um/mm ; ; ; exact ; a thousandth
mm/m = 1 mm/m ; ; ; exact ; a thousandth
in/ft = 1 in/ft ; ; ; exact ; NIST SP 811 (2008) B.8
tpi = 1/in ; TPI ; ; exact ; ASME B1.1 (threads per inch)

# acceleration
m/s2 = 1 m/s2 ; ; ; exact ; SI
gn = 9.80665 m/s2 ; ; gₙ ; exact ; NIST SP 811 (2008) B.8, standard gravity
`;

/** Words that mean more than one unit, each with what it may mean. The sheet asks, once for those that are a setting. */
export const ambiguous: ReadonlyArray<{
  words: readonly string[];
  /** What is asked. */
  question: string;
  setting?: 'ton' | 'tenth';
  units: readonly string[];
}> = [
  {
    words: ['ton', 'tons', 'tonf', 'tonsf'],
    question: 'which ton',
    setting: 'ton',
    units: ['short_ton', 'long_ton', 'tonne'],
  },
  {
    words: ['tenth', 'tenths'],
    question: 'which tenth',
    setting: 'tenth',
    units: ['tenth_in', 'tenth_mm'],
  },
  { words: ['gal', 'gallon', 'gallons'], question: 'which gallon', units: ['gal_us', 'gal_imp'] },
  { words: ['gpm'], question: 'which gallon', units: ['gpm_us', 'gpm_imp'] },
  { words: ['pt', 'pint', 'pints'], question: 'which pint', units: ['pt_us', 'pt_imp'] },
  { words: ['cwt'], question: 'which hundredweight', units: ['cwt_long', 'cwt_short'] },
];

/**
 * Masses whose name the trade uses for the force of that mass under standard gravity. Where a force is wanted
 * (or a pressure, a torque), `lb` reads as `lbf` and `short_ton` as `short_tonf`.
 */
export const forceOfMass: Readonly<Record<string, string>> = {
  kg: 'kgf',
  lb: 'lbf',
  oz: 'ozf',
  short_ton: 'short_tonf',
  long_ton: 'long_tonf',
  tonne: 'tonnef',
};
