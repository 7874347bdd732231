// The season's hours in plain C, the yardstick of their speed: the same
// recurrence, in the same order, with the same tables, and tuned as the package
// is: branches where a minimum rarely matters, inverses and daily sums made once
// a day or once a year. It reads a boat and its
// hours from standard input, as speed_test.go writes them, runs a unit and a
// load of ice through them so many times, and prints for each the nanoseconds
// of an hour and what the years came to.
//
//	gcc -O3 -o season season.c -lm && ./season < hours
//
// To run it against the package: go test ./economics/season -run '^$' -bench C
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define NOON 12
#define STOW_HOURS 6
#define BAG_HOURS 6
#define BINS 260
#define MELT_KJ (333.6 + 4.19 * 2)

// Branches: fmin and fmax look out for what is no number, which none of these is.
static inline double least(double a, double b) { return a < b ? a : b; }
static inline double most(double a, double b) { return a > b ? a : b; }

typedef struct { double cabin, openKJ, perWp; int opening, motoring; } Hour;
typedef struct {
	int month, shore, starts, left, sells; // left: days of the trip, this one too
	double sea, stow, drinks, meltKg, floorKg, chillKg;
} Day;
typedef struct { int waiting, from, to, counts; } Bag; // hours of the day

static double leakCabin, leakSea, leakEngine, leakDeck, opens, swappedL, heatKJ, target, limit;
static double wp, fullWh, restartWh, keeps, perKeeps, openLPerS, surfaceW, lnK;
static double houseW, engineW, engineHours;
static double rated, eta, plate, rise, fanW, standbyW;
static double film, lump, roomKg, portionKg, carryKg, carryLoss, stowedC;
static int shopEvery, stops;

typedef struct {
	int nights, cold, nightsBy[12], coldBy[12], hours, over5, medicine, off, longestOff, worst, errands;
	double gainBy[12], unitBy[12], runBy[12], meltBy[12];
	double boughtKg, lostKg, sun, spill, shore, engine, drawn, unmet, lowest;
	double gain, cooled, stored, unit, house, lost, storedWh;
	unsigned food[BINS];
	int offRun, warmRun, over;
} Tally;

// Saturated air: its enthalpy and dry density, every quarter kelvin from -20 °C.
static double saturated[281], coldAir[281];

static double formulaKJ(double c, double *density) {
	double k = c + 273.15, ln;
	if (c < 0)
		ln = -5.6745359e3 / k + 6.3925247 + k * (-9.6778430e-3 + k * (6.2215701e-7 + k * (2.0747825e-9 - k * 9.4840240e-13))) + 4.1635019 * log(k);
	else
		ln = -5.8002206e3 / k + 1.3914993 + k * (-4.8640239e-2 + k * (4.1764768e-5 - k * 1.4452093e-8)) + 6.5459673 * log(k);
	double p = exp(ln) / 1000, w = 0.621945 * p / (101.325 - p);
	*density = 101.325 / (0.287042 * k * (1 + 1.607858 * w));
	return 1.006 * c + w * (2501 + 1.86 * c);
}

static double exchangeKJ(double cabinKJ, double c) {
	double at = (c + 20) * 4, density;
	if (!(at >= 0 && at < 280)) {
		double kJ = formulaKJ(c, &density);
		return density * (cabinKJ - kJ);
	}
	int i = (int)at;
	density = coldAir[i] + (at - i) * (coldAir[i + 1] - coldAir[i]);
	return density * (cabinKJ - (saturated[i] + (at - i) * (saturated[i + 1] - saturated[i])));
}

// The Wright omega function, the condenser's logarithm and the two-thirds power,
// by cubics in the part of a step that is gone.
typedef struct { double value, rise; } Knot;
typedef struct { double c[4]; } Cubic;
static Cubic omegaTable[512], fallTable[70], surfaceTable[256];

static Cubic between(Knot a, Knot b) {
	double d = b.value - a.value;
	return (Cubic){{a.value, a.rise, 3 * d - 2 * a.rise - b.rise, a.rise + b.rise - 2 * d}};
}

static inline double at(const Cubic *k, double u) { return k->c[0] + u * k->c[1] + u * u * (k->c[2] + u * k->c[3]); }

static double solveOmega(double y) {
	double w = y > 1 ? y : exp(least(y, 0));
	for (int i = 0; i < 40; i++) {
		double e = exp(y - w), off = w - e, slope = 1 + e, step = 2 * off * slope / (2 * slope * slope + off * e);
		w -= step;
		if (fabs(step) <= 1e-5 * w) break;
	}
	return w;
}

static double omega(double y) {
	double place = (y + 8) * 32;
	if (!(place >= 0 && place < 512)) return solveOmega(y);
	int i = (int)place;
	return at(&omegaTable[i], place - i);
}

static double lnFall(double tc) {
	double place = tc - 30;
	if (!(place >= 0 && place < 70)) return log(most(1e-6, 1 - 0.008 * (tc - 45)));
	int i = (int)place;
	return at(&fallTable[i], place - i);
}

// twoThirds is read from an eighth to one; eight times x gives four times as much.
static double twoThirds(double x) {
	double part = 1;
	while (x < 0.125 && x > 0) x *= 8, part /= 4;
	while (x > 1) x /= 8, part *= 4;
	double place = x * 256;
	int i = (int)place;
	return i >= 256 ? part : part * at(&surfaceTable[i], place - i);
}

static Knot omegaKnot(int i) {
	double w = solveOmega(-8 + i / 32.0);
	return (Knot){w, w / (1 + w) / 32};
}

static Knot fallKnot(int i) {
	double left = 1 - 0.008 * (30 + i - 45);
	return (Knot){log(left), -0.008 / left};
}

static Knot surfaceKnot(int i) {
	double x = i / 256.0;
	return (Knot){pow(x, 2.0 / 3), 2.0 / 3 * pow(x, -1.0 / 3) / 256};
}

static void tables(void) {
	for (int i = 0; i <= 280; i++) saturated[i] = formulaKJ(-20 + i / 4.0, &coldAir[i]);
	for (int i = 0; i < 512; i++) omegaTable[i] = between(omegaKnot(i), omegaKnot(i + 1));
	for (int i = 0; i < 70; i++) fallTable[i] = between(fallKnot(i), fallKnot(i + 1));
	for (int i = 1; i < 256; i++) surfaceTable[i] = between(surfaceKnot(i), surfaceKnot(i + 1));
}

typedef struct { double sun, engine, surplus; int shore; } Supply; // shore: hours left of it
typedef struct { double wh, dayWh; int off; } Bank; // dayWh: when the day began

static Supply supplyAt(const Hour *a, int clock, int shoreNight) {
	Supply s = {wp * a->perWp, 0, 0, 0};
	if (a->motoring) s.engine = engineW * least(1, engineHours - (clock - 9));
	s.surplus = s.sun + s.engine - houseW;
	if (shoreNight && (clock >= 18 || clock < 6)) s.shore = (30 - clock) % 24;
	return s;
}

static inline void step(Bank *b, const Supply *s, double unitW, Tally *t) {
	double net = s->surplus - unitW, spill = 0, shore = 0;
	if (net >= 0) {
		double put = (fullWh - b->wh) * perKeeps;
		if (net < put) put = net, b->wh += net * keeps;
		else b->wh = fullWh;
		t->lost += put * (1 - keeps);
		spill = net - put;
	} else if (s->shore) {
		shore = -net;
	} else if (-net <= b->wh) {
		b->wh += net;
		t->drawn -= net;
	} else {
		t->drawn += b->wh;
		t->unmet += -net - b->wh;
		b->wh = 0;
	}
	if (s->shore && b->wh < fullWh) {
		double gained = (fullWh - b->wh) / s->shore, put = gained * perKeeps;
		shore += put;
		t->lost += put * (1 - keeps);
		b->wh += gained;
	}
	t->shore += shore;
	t->sun += s->sun;
	if (s->engine > 0) {
		double used = most(0, s->engine - spill);
		t->engine += used;
		spill -= s->engine - used;
	}
	t->spill += spill;
	if (b->wh <= 1e-9) b->off = 1;
	else if (b->wh >= restartWh || s->shore || s->engine > 0) b->off = 0;
	if (b->wh < t->lowest) t->lowest = b->wh;
}

// closeDay books what a day's hours have in common.
static void closeDay(Bank *b, double unitWh, Tally *t) {
	t->house += 24 * houseW;
	t->unit += unitWh;
	t->storedWh += b->wh - b->dayWh;
	b->dayWh = b->wh;
}

static inline void examineHours(Tally *t, double food, int hours) {
	if (food > 5.01) {
		t->over5 += hours;
		if (food > limit + 0.01) t->over += hours;
		if (food > 8.01) t->medicine += hours;
	} else if (food < 1.99) {
		t->medicine += hours;
	}
	int i = (int)((food + 10) / 0.25);
	t->food[i < 0 ? 0 : i >= BINS ? BINS - 1 : i] += hours;
}

static void examine(Tally *t, double food, int cooled, int counts) {
	t->hours++;
	if (counts) examineHours(t, food, 1);
	if (cooled) { t->offRun = 0; return; }
	t->off++;
	if (++t->offRun > t->longestOff) t->longestOff = t->offRun;
}

static void endDay(Tally *t, const Day *d) {
	t->nights++;
	t->nightsBy[d->month]++;
	if (t->over <= 2) {
		t->cold++;
		t->coldBy[d->month]++;
		t->warmRun = 0;
	} else if (++t->warmRun > t->worst) {
		t->worst = t->warmRun;
	}
	t->over = 0;
	if (d->left == 1) t->offRun = t->warmRun = 0;
}

static double leakW(const Hour *a, double sea, double box) {
	double over = a->cabin - box, gain = leakCabin * over + leakSea * (sea - box) + leakDeck * (over + 3);
	return gain + leakEngine * (a->motoring ? over + 8 : over);
}

static double openingW(const Hour *a, double box) {
	if (!a->opening) return 0;
	return openLPerS * exchangeKJ(a->openKJ, box);
}

static Bag bagOf(const Day *d, double box) {
	if (!d->starts) return (Bag){0, 0, STOW_HOURS, 0};
	if (box <= limit + 0.01) return (Bag){0, 0, STOW_HOURS, BAG_HOURS};
	return (Bag){1, BAG_HOURS, BAG_HOURS + STOW_HOURS, BAG_HOURS};
}

// look ends hour i, and tells whether it counts.
static int look(Bag *b, int i, double box) {
	int counts = i >= b->counts;
	if (b->waiting && i < b->from && box <= limit + 0.01) *b = (Bag){0, i + 1, i + 1 + STOW_HOURS, i + 1};
	return counts;
}

// work gives what the unit does in a box and at a condensing temperature.
static inline void work(double box, double tc, double *cop, double *capacity) {
	double w = omega(lnK + lnFall(tc) + 0.045 * (box + 10)), depth = w * (1 / 0.045), te = box - depth;
	if (te > 5) te = 5, *capacity = rated * (1 - 0.008 * (tc - 45)) * exp(0.045 * (te + 10));
	else *capacity = plate * depth;
	*cop = eta * ((te + 273.15) / (tc - te));
}

// A box held at its target, by cubics over the condensing temperature.
#define HELD 45
static struct { Cubic perCop, perCapacity; } heldTable[HELD];

static double slopeAt(const double *v, int i) {
	if (i == 0) return -1.5 * v[0] + 2 * v[1] - 0.5 * v[2];
	if (i == HELD) return 1.5 * v[i] - 2 * v[i - 1] + 0.5 * v[i - 2];
	return (v[i + 1] - v[i - 1]) / 2;
}

static Cubic through(const double *v, int i) {
	return between((Knot){v[i], slopeAt(v, i)}, (Knot){v[i + 1], slopeAt(v, i + 1)});
}

static void holding(void) {
	double perCop[HELD + 1], perCapacity[HELD + 1];
	for (int i = 0; i <= HELD; i++) {
		double cop, capacity;
		work(target, 30 + i, &cop, &capacity);
		perCop[i] = 1 / cop, perCapacity[i] = 1 / capacity;
	}
	for (int i = 0; i < HELD; i++) heldTable[i].perCop = through(perCop, i), heldTable[i].perCapacity = through(perCapacity, i);
}

typedef struct { double gainWh, unitWh, run; } Sums;

// held runs hours of a box at its target for as long as the unit holds it there,
// and gives the hour after.
static int held(const Day *d, const Hour *hours, int from, const Bag *bag, Bank *b, Tally *t, Sums *sums) {
	double leak = leakCabin + leakSea + leakEngine + leakDeck, wh = b->wh, lowest = t->lowest;
	double restW = leakSea * d->sea + 3 * leakDeck - (leak + d->drinks) * target, perCabin = leakCabin + leakDeck + leakEngine + d->drinks;
	double openW = openLPerS * exchangeKJ(0, target), perKJ = openLPerS * exchangeKJ(1, target) - openW;
	double stowW = d->stow * (stowedC - target), sun = 0, lost = 0, spill = 0, drawn = 0;
	int i, counts = 0;
	for (i = from; i < 24; i++) {
		const Hour *a = &hours[i];
		double gain = restW + perCabin * a->cabin;
		if (a->motoring) gain += 8 * leakEngine;
		if (a->opening) gain += openW + perKJ * a->openKJ;
		if (i >= bag->from && i < bag->to) gain += stowW;
		double place = most(0, a->cabin + rise - 30);
		int k = (int)place;
		if (k >= HELD) break;
		double perCop = at(&heldTable[k].perCop, place - k), share = gain * at(&heldTable[k].perCapacity, place - k);
		if (gain <= 0 || share > 1) break;
		double need = gain * perCop, unit = need + fanW * share + standbyW;
		if (a->motoring || d->shore) {
			Supply s = supplyAt(a, i < 12 ? i + NOON : i - NOON, d->shore);
			if (!s.shore && wh + s.surplus - fanW < need) break;
			b->wh = wh;
			step(b, &s, unit, t);
			wh = b->wh;
			lowest = least(lowest, wh);
		} else {
			double in = wp * a->perWp, net = in - houseW - unit;
			if (net >= 0) {
				double put = (fullWh - wh) * perKeeps;
				if (net < put) put = net, wh += net * keeps;
				else wh = fullWh;
				lost += put * (1 - keeps);
				spill += net - put;
			} else {
				if (wh + net < fanW + 1) break;
				wh += net;
				drawn -= net;
				lowest = least(lowest, wh);
			}
			sun += in;
		}
		sums->gainWh += gain, sums->unitWh += unit, sums->run += share;
		if (i >= bag->counts) counts++;
		if (b->off) { i++; break; }
	}
	b->wh = wh, t->lowest = lowest;
	t->sun += sun, t->lost += lost, t->spill += spill, t->drawn += drawn;
	if (i > from) {
		t->hours += i - from;
		t->offRun = 0;
		examineHours(t, target, counts);
	}
	return i;
}

static void unitYear(const Day *days, const Hour *hours, int nights, Tally *t) {
	double box = 0, wattPerK = heatKJ / 3.6, kelvinPerW = 3.6 / heatKJ;
	Bank b = {0, 0, 0};
	for (int n = 0; n < nights; n++, hours += 24) {
		const Day *d = &days[n];
		if (d->starts) box = hours[0].cabin, b = (Bank){fullWh, fullWh, 0};
		double gainWh = 0, cooledWh = 0, unitWh = 0, run = 0, start = box;
		Bag bag = bagOf(d, box);
		Sums sums = {0, 0, 0};
		for (int i = 0; i < 24; i++) {
			if (fabs(box - target) < 1e-9 && !b.off && !bag.waiting && (i = held(d, hours, i, &bag, &b, t, &sums)) == 24) break;
			const Hour *a = &hours[i];
			int clock = i < 12 ? i + NOON : i - NOON;
			double gain = leakW(a, d->sea, box) + openingW(a, box) + d->drinks * (a->cabin - box);
			if (i >= bag.from && i < bag.to) gain += d->stow * (stowedC - box);
			double cop, capacity;
			work(box, most(30, a->cabin + rise), &cop, &capacity);
			double need = gain + (box - target) * wattPerK;
			if (need < 0) need = 0;
			Supply s = supplyAt(a, clock, d->shore);
			// Power rarely limits: only then is it worked out what there is.
			double power = capacity, cooled = need, unit = 0;
			if (b.off || cop * (b.wh + s.surplus - fanW) < capacity) {
				double hand = s.shore ? INFINITY : b.off ? 0 : most(0, b.wh + s.surplus);
				power = most(0, cop * (hand - fanW));
			}
			if (capacity < cooled) cooled = capacity;
			if (power < cooled) cooled = power;
			if (cooled > 0) {
				double share = cooled / capacity;
				unit = cooled / cop + fanW * share;
				run += share;
			}
			if (!b.off || s.shore) unit += standbyW;
			box += (gain - cooled) * kelvinPerW;
			step(&b, &s, unit, t);
			gainWh += gain;
			unitWh += unit;
			cooledWh += cooled;
			examine(t, box, cooled > 0 || need == 0, look(&bag, i, box));
		}
		gainWh += sums.gainWh, cooledWh += sums.gainWh, unitWh += sums.unitWh, run += sums.run;
		t->gainBy[d->month] += gainWh;
		t->unitBy[d->month] += unitWh;
		t->runBy[d->month] += run;
		t->gain += 3.6 * gainWh;
		t->cooled += 3.6 * cooledWh;
		t->stored += heatKJ * (box - start);
		closeDay(&b, unitWh, t);
		endDay(t, d);
	}
}

static double buy(const Day *d, int day, double kg, Tally *t) {
	if (day % shopEvery || !d->sells) return kg;
	int days = stops * shopEvery < d->left ? stops * shopEvery : d->left;
	double want = 1.2 * days * d->meltKg + d->floorKg - kg + (d->starts ? d->chillKg : 0), part = 1 - carryLoss;
	double bags = floor(least(want, roomKg - kg) / (portionKg * part) + 0.75 + 1e-9);
	if (!d->starts) bags = least(bags, most(1, floor(carryKg / portionKg + 1e-9)));
	if (bags <= 0) return kg;
	double loaded = least(bags * portionKg * part, roomKg - kg);
	t->lostKg += bags * portionKg - loaded;
	t->boughtKg += bags * portionKg;
	return kg + loaded;
}

static void iceYear(const Day *days, const Hour *hours, int nights, Tally *t) {
	double food = 0, kg = 0, leak = leakCabin + leakSea + leakEngine + leakDeck, perMelt = 1 / MELT_KJ;
	int day = 0;
	for (int n = 0; n < nights; n++, hours += 24) {
		const Day *d = &days[n];
		if (d->starts) food = hours[0].cabin, kg = 0, day = 0;
		Bag bag = bagOf(d, food);
		kg = buy(d, day++, kg, t);
		double gainWh = 0, cooledKJ = 0, storedKJ = 0, meltKg = 0;
		for (int i = 0; i < 24; i++) {
			const Hour *a = &hours[i];
			double slope = leak + d->drinks, fixed = leakW(a, d->sea, 0) + d->drinks * a->cabin + openingW(a, food);
			if (i >= bag.from && i < bag.to) slope += d->stow, fixed += d->stow * stowedC;
			double was = food, taken = 0, melted = 0;
			int balanced = 0;
			if (kg > 0) {
				double surface = surfaceW * twoThirds(kg / 64);
				if (food > 5) surface *= sqrt(sqrt(food / 5));
				food = (heatKJ * was + 3.6 * fixed) / (heatKJ + 3.6 * (slope + surface));
				if (food > 0) taken = 3.6 * surface * food, balanced = 1;
				melted = taken * perMelt;
				if (melted > kg - 1e-9) {
					taken -= (melted - kg) * MELT_KJ;
					melted = kg, balanced = 0;
				}
				kg -= melted;
			}
			if (!balanced) food = (heatKJ * was + 3.6 * fixed - taken) / (heatKJ + 3.6 * slope);
			cooledKJ += taken;
			storedKJ += heatKJ * (food - was);
			gainWh += fixed - slope * food;
			meltKg += melted;
			examine(t, food, kg > 0, look(&bag, i, food));
		}
		t->gainBy[d->month] += gainWh;
		t->meltBy[d->month] += meltKg;
		t->gain += 3.6 * gainWh;
		t->cooled += cooledKJ;
		t->stored += storedKJ;
		endDay(t, d);
		if (d->left == 1) t->lostKg += kg;
	}
}

static double number(void) {
	double v;
	if (scanf("%lf", &v) != 1) {
		fprintf(stderr, "a number is missing\n");
		exit(1);
	}
	return v;
}

static double sum(const double by[12]) {
	double s = 0;
	for (int m = 0; m < 12; m++) s += by[m];
	return s;
}

static double seconds(void) {
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return t.tv_sec + t.tv_nsec * 1e-9;
}

static void run(const char *name, void (*year)(const Day *, const Hour *, int, Tally *), const Day *days, const Hour *hours, int nights, int years) {
	static Tally t;
	double best = INFINITY;
	for (int round = 0; round < 2000; round++) {
		t = (Tally){.lowest = fullWh};
		double start = seconds();
		for (int i = 0; i < years; i++) year(days, hours, nights, &t);
		best = least(best, seconds() - start);
	}
	printf("%s %.4f %d %d %.9g %.9g %.9g %.9g %.9g %.9g\n", name, best * 1e9 / ((double)years * nights * 24), t.nights / years, t.cold / years,
		sum(t.gainBy) / years, t.unit / years, sum(t.meltBy) / years, t.boughtKg / years, t.drawn / years, t.spill / years);
}

int main(void) {
	double *figures[] = {&leakCabin, &leakSea, &leakEngine, &leakDeck, &opens, &swappedL, &heatKJ, &target, &limit, &wp, &fullWh, &restartWh, &keeps,
		&houseW, &engineW, &engineHours, &rated, &eta, &plate, &rise, &fanW, &standbyW, &film, &lump, &roomKg, &portionKg, &carryKg, &carryLoss, &stowedC};
	for (size_t i = 0; i < sizeof figures / sizeof *figures; i++) *figures[i] = number();
	shopEvery = (int)number(), stops = (int)number();
	int years = (int)number(), nights = (int)number();
	Day *days = calloc(nights, sizeof *days);
	Hour *hours = calloc(nights * 24, sizeof *hours);
	for (int n = 0; n < nights; n++) {
		Day *d = &days[n];
		d->month = (int)number(), d->shore = (int)number(), d->starts = (int)number(), d->left = (int)number(), d->sells = (int)number();
		d->sea = number(), d->stow = number(), d->drinks = number(), d->meltKg = number(), d->floorKg = number(), d->chillKg = number();
		for (int i = 0; i < 24; i++) {
			Hour *a = &hours[24 * n + i];
			a->cabin = number(), a->openKJ = number(), a->perWp = number(), a->opening = (int)number(), a->motoring = (int)number();
		}
	}
	tables();
	perKeeps = 1 / keeps, openLPerS = opens / 14 * swappedL / 3600, lnK = log(0.045 * rated / plate), surfaceW = film * 6 * pow(64 / lump, 2.0 / 3);
	holding();
	run("unit", unitYear, days, hours, nights, years);
	run("ice", iceYear, days, hours, nights, years);
	return 0;
}
