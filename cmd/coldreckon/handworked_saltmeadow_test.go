package main

import "testing"

// TestSaltmeadowByHand holds the program to this page.
//
//	Saltmeadow, Windward Islands, September: the hottest month aboard
//
//	Box      24 × 22 × 24 in = 0.610 × 0.559 × 0.610 m; foam 76.2 mm, top 50.8 mm
//	Foam     k = 0.024 exp(6 × 0) = 0.0240 W/m·K
//	                   area     1/h + t/k + 1/h              R        U       UA      U·t
//	  top      0.3406  0.1639 + 2.117 + 0.1639 = 2.445  0.409  0.1393  0.0208
//	  bottom   0.3406  0.1075 + 3.175 + 0.1075 = 3.390  0.295  0.1005  0.0225
//	  inboard  0.3716  0.1205 + 3.175 + 0.1205 = 3.416  0.293  0.1088  0.0223
//	  outboard 0.3716  0.1205 + 3.175 + 0.0020 = 3.297  0.303  0.1127  0.0231
//	  fore     0.3406  0.1205 + 3.175 + 0.1205 = 3.416  0.293  0.0997  0.0223
//	  aft      0.3406  0.1205 + 3.175 + 0.1205 = 3.416  0.293  0.0997  0.0223
//	  sum of faces 0.661; U·t counts by (t - 10 mm)/10 mm up to 20 mm
//	Edges    0.54 × inside length × mean U·t, twelve of them: 0.0854; corners, eight: 0.0019
//	Seal     0.08 × 1.626 m = 0.130; drain none: 0
//	Drawn    0.878 W/K: to the cabin 0.750, sea 0.128
//
//	Cabin    28.0 + 1.11 = 29.11 °C; half the range 2.90 K; 7 to 21 h 30.59 °C; sea 28.7 °C; food 4.44 °C
//	Leak     0.750 × 24.67 + 0.128 × 24.26 = 21.6 W
//	Openings w 0.01937; 80.3 - 17.5 = 62.8 kJ/kg; cold air 1.261 kg/m³; free air 0.5 × (207.7 - 69.2) = 69.2 L
//	         20 × 0.3 × 0.06922 × 1.261 × 62.8/86.4 = 0.3807 W
//	Goods    perishables 0.8573 kg/d × 3.5 × (8 - 4.44)/86.4 = 0.123;
//	           drinks 2.1 kg/d × 4.19 × 24.67/86.4 = 2.512: 2.636 W
//	Gain     24.62 W; ice 86.4 × 24.62/342.0 = 6.22 kg/d
//	         a load 207.7 × 0.333 × 0.92 = 63.7 kg
//	Holds    0.15 × 207.7 + jars 40 + 3.5 × 2.143 + 4.19 × 2.1 = 87.45 kJ/K
//
//	Small    55 W, ducted fan: Tc 29.11 + 12 = 41.1; 55 × (1 - 0.008 × (41.1 - 45)) = 56.7 W; plate 5 × 1.1 = 5.5 W/K
//	         Te -7.23: 56.7 exp(0.045 × 2.77) = 5.5 × 11.68 = 64.2 W
//	         COP 0.33 × 265.92/48.3 = 1.815; 64.2/1.815 + 3 = 38.4 W; runs 24.80/64.2 = 0.3862;
//	           24 × (0.3862 × 38.4 + 0.1) = 358.2 Wh/d
//	         from 29.1 °C, 87.45 kJ/K down to 4.44 °C against what leaks in meanwhile, in steps of 0.05 K: 8.5 h
//	Larger   100 W, sea: Tc 28.70 + 6 = 34.7; 100 × (1 - 0.008 × (34.7 - 45)) = 108.2 W; plate 5 × 2 = 10 W/K
//	         Te -7.61: 108.2 exp(0.045 × 2.39) = 10 × 12.05 = 120.5 W
//	         COP 0.33 × 265.54/42.3 = 2.071; 120.5/2.071 + 3 = 61.2 W; runs 24.80/120.5 = 0.2058;
//	           24 × (0.2058 × 61.2 + 0.1) = 304.6 Wh/d
//	         from 29.1 °C, 87.45 kJ/K down to 4.44 °C against what leaks in meanwhile, in steps of 0.05 K: 4.05 h
//	Sun      the 15th, 14.2° N: declination 0.037, sunset 1.580 rad; a 0.664, b 0.419;
//	           sum of the hours' squares 0.1080
//	         5.52 kWh × 0.1080 = 596 W/m², air 29.7, cells 29.7 + 25 × 596/800 = 48.3: 0.907
//	         350 × 5.52 × 0.92 × 0.96 × 0.94 × 0.907 = 1455 Wh/d
//
//	Money, 10 years, 365 nights; a year each year is worth 8.5302 now. Perishables aboard 0.8573 × 5/2 = 2.143 kg.
//	  ice     725.7 kg (run) × 1.653 + 0 errands (run) × 10
//	           + spoiled 2.143 × 355.9 warm days (run) × 0.80 = 1810 a year; × 8.5302 = 1.544e+04
//	  dry     2 × 365 × 0.3 = 219 a year; × 8.5302 = 1868
//	  small   first 1200 + 120 + 70 = 1390; upkeep 24 + engine 25.92 × 1.5 + wear 67.14 × 0.73
//	           + stops unseen 365/365/8 × 2.143 × 8 = 114.0 a year
//	          1390 + 114.0 × 8.5302 = 2362; /8.5302 = 277.0 a year
//	  larger  first 3000 + 500 + 70 + 500 + 350 = 4420;
//	           upkeep 75 + engine 25.89 × 1.5 + wear 57.34 × 0.73
//	           + stops unseen 2.14 = 157.8 a year
//	          4420 + 157.8 × 8.5302 = 5766; /8.5302 = 676.0 a year
//
//	With the work found, as the run bills it (first, a year):
//	  ice     two thirds of the box for it, foam inboard 0.3716 m² × 150 = 55.74; 55.74 + 1866 × 8.5302 = 1.598e+04
//	  small   1390 + 114.0 × 8.5302 = 2362; /8.5302 = 277.0 a year
//	  larger  4420 + 157.8 × 8.5302 = 5766; /8.5302 = 676.0 a year
//	Even     small: whatever the nights 277.0 - 114.0 + 24 = 187, ice 55.74/8.5302 = 6.535; a night 0.2466, ice 1866/365 = 5.113: 37.1 nights
//	Even     larger: whatever the nights 676.0 - 157.8 + 75 = 593.2, ice 6.535; a night 0.2269, ice 5.113: 120 nights
func TestSaltmeadowByHand(t *testing.T) {
	sheet := runOf(t, "saltmeadow").sheet
	holdToPage(t, sheet, []handRow{
		{"box/volume_l", 207.7},
		{"box/ua_drawn_w_per_k", 0.8781},
		{"box/ua_w_per_k", 0.8781},
		{"box/heat_by_source/top, with the lid/ua_w_per_k", 0.1393},
		{"box/heat_by_source/bottom/ua_w_per_k", 0.1005},
		{"box/heat_by_source/inboard wall/ua_w_per_k", 0.1088},
		{"box/heat_by_source/outboard wall/ua_w_per_k", 0.1127},
		{"box/heat_by_source/fore wall/ua_w_per_k", 0.09972},
		{"box/heat_by_source/aft wall/ua_w_per_k", 0.09972},
		{"box/heat_by_source/lid seal/ua_w_per_k", 0.13},
		{"box/heat_by_source/edges and corners/ua_w_per_k", 0.0873},
		{"box/heat_by_source_month", 9},
		{"months/9/cabin_c", 29.11},
		{"months/9/leak_w", 21.61},
		{"months/9/openings_w", 0.3807},
		{"months/9/goods_w", 2.636},
		{"months/9/heat_gain_w", 24.62},
		{"months/9/ice_kg_per_day", 6.22},
		{"box/ice_capacity_kg", 63.68},
		{"unit_figures/small/condenser_c", 41.11},
		{"unit_figures/small/plate_c", -7.234},
		{"unit_figures/small/capacity_w", 64.23},
		{"unit_figures/small/cop", 1.815},
		{"unit_figures/small/run_share", 0.3862},
		{"months/9/small_wh_per_day", 358.2},
		{"unit_figures/small/pull_down_h", 8.504},
		{"unit_figures/larger/condenser_c", 34.7},
		{"unit_figures/larger/plate_c", -7.609},
		{"unit_figures/larger/capacity_w", 120.5},
		{"unit_figures/larger/cop", 2.071},
		{"unit_figures/larger/run_share", 0.2058},
		{"months/9/larger_wh_per_day", 304.6},
		{"unit_figures/larger/pull_down_h", 4.05},
		{"months/9/solar_wh_per_day", 1455},
		{"options/ice/as_told/first_cost", 0},
		{"options/ice/as_told/per_year", 1810},
		{"options/ice/as_told/present_cost", 15440},
		{"options/ice/as_told/yearly_equivalent", 1810},
		{"options/dry/as_told/first_cost", 0},
		{"options/dry/as_told/per_year", 219},
		{"options/dry/as_told/present_cost", 1868},
		{"options/dry/as_told/yearly_equivalent", 219},
		{"options/small/as_told/first_cost", 1390},
		{"options/small/as_told/per_year", 114.0},
		{"options/small/as_told/present_cost", 2362},
		{"options/small/as_told/yearly_equivalent", 277.0},
		{"options/larger/as_told/first_cost", 4420},
		{"options/larger/as_told/per_year", 157.8},
		{"options/larger/as_told/present_cost", 5766},
		{"options/larger/as_told/yearly_equivalent", 676.0},
		{"options/ice/fitted/present_cost", 15980},
		{"options/ice/fitted/yearly_equivalent", 1873},
		{"options/small/fitted/present_cost", 2362},
		{"options/small/fitted/yearly_equivalent", 277.0},
		{"options/larger/fitted/present_cost", 5766},
		{"options/larger/fitted/yearly_equivalent", 676.0},
		{"break_even/small/nights_per_year", 37.08},
		{"break_even/larger/nights_per_year", 120.1},
	})
}
