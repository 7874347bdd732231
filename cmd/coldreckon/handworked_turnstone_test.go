package main

import "testing"

// TestTurnstoneByHand holds the program to this page.
//
//	Turnstone, west coast of Scotland, September (July and August are left out): the hottest month aboard
//
//	Box      45 L as 1 : 1 : 1.1: side 0.3446 m, height 0.3790 m; foam 80 mm, top half of it
//	Foam     k = 0.033 exp(2.5 × 0) = 0.0330 W/m·K
//	                   area     1/h + t/k + 1/h              R        U       UA      U·t
//	  top      0.1187  0.1639 + 1.212 + 0.1639 = 1.540  0.649  0.0771  0.0260
//	  bottom   0.1187  0.1075 + 2.424 + 0.1075 = 2.639  0.379  0.0450  0.0303
//	  inboard  0.1306  0.1205 + 2.424 + 0.1205 = 2.665  0.375  0.0490  0.0300
//	  outboard 0.1306  0.1205 + 2.424 + 0.0020 = 2.547  0.393  0.0513  0.0314
//	  fore     0.1306  0.1205 + 2.424 + 0.1205 = 2.665  0.375  0.0490  0.0300
//	  aft      0.1306  0.1205 + 2.424 + 0.1205 = 2.665  0.375  0.0490  0.0300
//	  sum of faces 0.320; U·t counts by (t - 10 mm)/10 mm up to 20 mm
//	Edges    0.54 × inside length × mean U·t, twelve of them: 0.0685; corners, eight: 0.0026
//	Seal     0.08 × 1.300 m = 0.104; drain trapped: 0
//	Drawn    0.495 W/K: to the cabin 0.432, sea 0.064
//	Ice test 1.2 kg in 24 h, 16 °C outside, 3 °C inside: 1.2 × 333.6/3.6/24/13 = 0.356 W/K
//	Together exp((16 ln 0.495 + 100 ln 0.356)/116) = 0.373 W/K
//	         all parts × 0.7528
//
//	Cabin    12.6 + 2 = 14.60 °C; half the range 2.8 K; 7 to 21 h 16.03 °C; sea 13.0 °C; food 5 °C
//	Leak     0.7528 × (0.432 × 9.60 + 0.064 × 8.00) = 3.5 W
//	Openings w 0.00786; 36.0 - 18.6 = 17.4 kJ/kg; cold air 1.258 kg/m³; free air 0.5 × (45.0 - 11.2) = 16.9 L
//	         8 × 0.3 × 0.01687 × 1.258 × 17.4/86.4 = 0.01028 W
//	Goods    perishables 0.55 kg/d × 3.5 × (8 - 5)/86.4 = 0.0668;
//	           drinks 0.7 kg/d × 4.19 × 9.60/86.4 = 0.3259: 0.3927 W
//	Gain     3.907 W; ice 86.4 × 3.907/342.0 = 0.987 kg/d
//	         a load 45.0 × 0.25 × 0.92 = 10.3 kg
//	Holds    0.15 × 45.0 + jars 18 + 3.5 × 0.55 + 4.19 × 0.7 = 29.61 kJ/K
//
//	Small    60 W, fins: Tc 14.60 + 20 = 34.6; 60 × (1 - 0.008 × (34.6 - 45)) = 65.0 W; plate 5 × 1.2 = 6 W/K
//	         Te -7.26: 65.0 exp(0.045 × 2.74) = 6 × 12.26 = 73.5 W
//	         COP 0.33 × 265.89/41.9 = 2.096; 73.5/2.096 = 35.1 W; runs 3.91/73.5 = 0.0532;
//	           24 × (0.0532 × 35.1 + 0.1) = 47.15 Wh/d
//	         from 14.6 °C, 29.61 kJ/K down to 5 °C against what leaks in meanwhile, in steps of 0.05 K: 0.968 h
//	Larger   100 W, fan in its locker: Tc 14.60 + 15 is under 30, so 30; 100 × (1 - 0.008 × (30.0 - 45)) = 112.0 W;
//	           plate 5 × 2 = 10 W/K
//	         Te -7.52: 112.0 exp(0.045 × 2.48) = 10 × 12.52 = 125.2 W
//	         COP 0.33 × 265.63/37.5 = 2.336; 125.2/2.336 + 3 = 56.6 W; runs 3.91/125.2 = 0.0312;
//	           24 × (0.0312 × 56.6 + 0.1) = 44.8 Wh/d
//	         from 14.6 °C, 29.61 kJ/K down to 5 °C against what leaks in meanwhile, in steps of 0.05 K: 0.562 h
//	Sun      the 15th, 56.4° N: declination 0.037, sunset 1.626 rad; a 0.684, b 0.400;
//	           sum of the hours' squares 0.1054
//	         2.5 kWh × 0.1054 = 263 W/m², air 14.2, cells 14.2 + 43 × 263/800 = 28.3: 0.987
//	         20 × 2.5 × 0.75 × 0.8 × 0.94 × 0.987 = 27.82 Wh/d
//
//	Money, 10 years, 28 nights; a year each year is worth 8.5302 now. Perishables aboard 0.55 × 2/2 = 0.55 kg.
//	  ice     0 kg (run) × 1.5 + 0 errands (run) × 3 = 0 a year; × 8.5302 = 0
//	  dry     2 × 28 × 1.6 = 89.6 a year; × 8.5302 = 764.3
//	  small   first 750 + 120 + 70 = 940; upkeep 15 + engine 0.3773 × 1.5 + wear 1.509 × 0.73 = 16.67 a year
//	          940 + 16.67 × 8.5302 = 1082; /8.5302 = 126.9 a year
//	  larger  first 2200 + 500 + 70 = 2770; upkeep 55 + engine 0.3776 × 1.5 + wear 1.449 × 0.73 = 56.62 a year
//	          2770 + 56.62 × 8.5302 = 3253; /8.5302 = 381.4 a year
//
//	With the work found, as the run bills it (first, a year):
//	  ice     0 + 0 × 8.5302 = 0; /8.5302 = 0 a year
//	  small   940 + 16.67 × 8.5302 = 1082; /8.5302 = 126.9 a year
//	  larger  2770 + 56.62 × 8.5302 = 3253; /8.5302 = 381.3 a year
//	Even     small: a night 0.0596, and ice 0: never
//	Even     larger: a night 0.0579, and ice 0: never
func TestTurnstoneByHand(t *testing.T) {
	sheet := runOf(t, "turnstone").sheet
	holdToPage(t, sheet, []handRow{
		{"box/volume_l", 45},
		{"box/ua_drawn_w_per_k", 0.4955},
		{"box/evidence/ice test/ua_w_per_k", 0.3564},
		{"box/ua_w_per_k", 0.373},
		{"box/heat_by_source/top, with the lid/ua_w_per_k", 0.05804},
		{"box/heat_by_source/bottom/ua_w_per_k", 0.03386},
		{"box/heat_by_source/inboard wall/ua_w_per_k", 0.03689},
		{"box/heat_by_source/outboard wall/ua_w_per_k", 0.0386},
		{"box/heat_by_source/fore wall/ua_w_per_k", 0.03689},
		{"box/heat_by_source/aft wall/ua_w_per_k", 0.03689},
		{"box/heat_by_source/lid seal/ua_w_per_k", 0.07829},
		{"box/heat_by_source/edges and corners/ua_w_per_k", 0.05352},
		{"box/heat_by_source_month", 9},
		{"months/9/cabin_c", 14.6},
		{"months/9/leak_w", 3.504},
		{"months/9/openings_w", 0.01028},
		{"months/9/goods_w", 0.3927},
		{"months/9/heat_gain_w", 3.907},
		{"months/9/ice_kg_per_day", 0.9871},
		{"box/ice_capacity_kg", 10.35},
		{"unit_figures/small/condenser_c", 34.6},
		{"unit_figures/small/plate_c", -7.256},
		{"unit_figures/small/capacity_w", 73.53},
		{"unit_figures/small/cop", 2.096},
		{"unit_figures/small/run_share", 0.05316},
		{"months/9/small_wh_per_day", 47.15},
		{"unit_figures/small/pull_down_h", 0.9678},
		{"unit_figures/larger/condenser_c", 30},
		{"unit_figures/larger/plate_c", -7.521},
		{"unit_figures/larger/capacity_w", 125.2},
		{"unit_figures/larger/cop", 2.336},
		{"unit_figures/larger/run_share", 0.03122},
		{"months/9/larger_wh_per_day", 44.8},
		{"unit_figures/larger/pull_down_h", 0.5623},
		{"months/9/solar_wh_per_day", 27.82},
		{"options/ice/as_told/first_cost", 0},
		{"options/ice/as_told/per_year", 0},
		{"options/ice/as_told/present_cost", 0},
		{"options/ice/as_told/yearly_equivalent", 0},
		{"options/dry/as_told/first_cost", 0},
		{"options/dry/as_told/per_year", 89.6},
		{"options/dry/as_told/present_cost", 764.3},
		{"options/dry/as_told/yearly_equivalent", 89.6},
		{"options/small/as_told/first_cost", 940},
		{"options/small/as_told/per_year", 16.67},
		{"options/small/as_told/present_cost", 1082},
		{"options/small/as_told/yearly_equivalent", 126.9},
		{"options/larger/as_told/first_cost", 2770},
		{"options/larger/as_told/per_year", 56.62},
		{"options/larger/as_told/present_cost", 3253},
		{"options/larger/as_told/yearly_equivalent", 381.4},
		{"options/ice/fitted/present_cost", 0},
		{"options/ice/fitted/yearly_equivalent", 0},
		{"options/small/fitted/present_cost", 1082},
		{"options/small/fitted/yearly_equivalent", 126.9},
		{"options/larger/fitted/present_cost", 3253},
		{"options/larger/fitted/yearly_equivalent", 381.3},
	})
	neverEven(t, sheet)
}
