package main

import "testing"

// TestSandpiperByHand holds the program to this page.
//
//	Sandpiper, Chesapeake, June: the hottest month aboard
//
//	Box      1.6 cu ft = 45.3 L as 1 : 1 : 1.1: side 0.3453 m, height 0.3799 m; foam 19.05 mm, top half of it
//	Foam     k = 0.036 exp(4 × 0.04) = 0.0422 W/m·K
//	                   area     1/h + t/k + 1/h              R        U       UA      U·t
//	  top      0.1193  0.1639 + 0.225 + 0.1639 = 0.553  1.807  0.2155  0.0000
//	  bottom   0.1193  0.1075 + 0.451 + 0.1075 = 0.666  1.502  0.1791  0.0259
//	  inboard  0.1312  0.1205 + 0.451 + 0.1205 = 0.692  1.445  0.1896  0.0249
//	  outboard 0.1312  0.1205 + 0.451 + 0.0020 = 0.573  1.744  0.2288  0.0301
//	  fore     0.1312  0.1205 + 0.451 + 0.1205 = 0.692  1.445  0.1896  0.0249
//	  aft      0.1312  0.1205 + 0.451 + 0.1205 = 0.692  1.445  0.1896  0.0249
//	  sum of faces 1.192; U·t counts by (t - 10 mm)/10 mm up to 20 mm
//	Edges    0.54 × inside length × mean U·t, twelve of them: 0.0512; corners, eight: 0.0005
//	Seal     0.35 × 1.400 m = 0.490; drain none: 0
//	Drawn    1.734 W/K: to the cabin 1.495, sea 0.239
//
//	Cabin    24.4 + 2 = 26.40 °C; half the range 4.9 K; 7 to 21 h 28.89 °C; sea 23.5 °C; food 4.44 °C
//	Leak     1.495 × 21.96 + 0.239 × 19.06 = 37.4 W
//	Openings w 0.01389; 64.6 - 17.5 = 47.1 kJ/kg; cold air 1.261 kg/m³; free air 0.5 × (45.3 - 15.1) = 15.1 L
//	         8 × 0.8 × 0.01510 × 1.261 × 47.1/86.4 = 0.06639 W
//	Goods    perishables 0.2177 kg/d × 3.5 × (8 - 4.44)/86.4 = 0.0314;
//	           drinks 0.7 kg/d × 4.19 × 21.96/86.4 = 0.7453: 0.7767 W
//	Gain     38.22 W; ice 86.4 × 38.22/342.0 = 9.66 kg/d
//	         a load 45.3 × 0.333 × 0.56 = 8.46 kg
//	Holds    0.15 × 45.3 + jars 18.1 + 3.5 × 0.2177 + 4.19 × 0.7 = 28.61 kJ/K
//
//	Small    60 W, fan in its locker: Tc 26.40 + 15 = 41.4; 60 × (1 - 0.008 × (41.4 - 45)) = 61.7 W;
//	           plate 5 × 1.2 = 6 W/K
//	         Te -7.22: 61.7 exp(0.045 × 2.78) = 6 × 11.66 = 70.0 W
//	         COP 0.33 × 265.93/48.6 = 1.805; 70.0/1.805 + 3 = 41.8 W; runs 38.24/70.0 = 0.5466;
//	           24 × (0.5466 × 41.8 + 0.1) = 550.2 Wh/d
//	         from 26.4 °C, 28.61 kJ/K down to 4.44 °C against what leaks in meanwhile, in steps of 0.05 K: 2.63 h
//	Larger   100 W, fan in its locker: Tc 26.40 + 15 = 41.4; 100 × (1 - 0.008 × (41.4 - 45)) = 102.9 W;
//	           plate 5 × 2 = 10 W/K
//	         Te -7.22: 102.9 exp(0.045 × 2.78) = 10 × 11.66 = 116.6 W
//	         COP 0.33 × 265.93/48.6 = 1.805; 116.6/1.805 + 3 = 67.6 W; runs 38.24/116.6 = 0.3280;
//	           24 × (0.3280 × 67.6 + 0.1) = 534.5 Wh/d
//	         from 26.4 °C, 28.61 kJ/K down to 4.44 °C against what leaks in meanwhile, in steps of 0.05 K: 1.34 h
//	Sun      the 15th, 37.8° N: declination 0.403, sunset 1.908 rad; a 0.789, b 0.299;
//	           sum of the hours' squares 0.0911
//	         6.63 kWh × 0.0911 = 604 W/m², air 26.9, cells 26.9 + 43 × 604/800 = 59.4: 0.862
//	         20 × 6.63 × 0.75 × 0.8 × 0.94 × 0.862 = 64.49 Wh/d
//
//	Money, 8 years, 12 nights; to be sold;
//	           a year each year is worth 7.0197 now. Perishables aboard 0.2177 × 2/2 = 0.2177 kg.
//	  ice     65.32 kg (run) × 0.8267 + 0 errands (run) × 3
//	           + spoiled 0.2177 × 12 warm days (run) × 0.80 = 56.09 a year; × 7.0197 = 393.7
//	  dry     1 × 12 × 0.3 = 3.6 a year; × 7.0197 = 25.27
//	  small   first 1300 + 120 + 70 = 1490;
//	           upkeep 26 + wear 1.463 × 0.73 + spoiled 0.2177 × 11.7 warm days (run) × 0.80 = 29.11 a year
//	          1490 + 29.11 × 7.0197 - 0.15 × 1420 × 0.7894 = 1526; /7.0197 = 217.4 a year
//	  larger  first 2800 + 500 + 70 = 3370;
//	           upkeep 70 + wear 1.453 × 0.73 + spoiled 0.2177 × 11.65 warm days (run) × 0.80 = 73.09 a year
//	          3370 + 73.09 × 7.0197 - 0.15 × 3300 × 0.7894 = 3492; /7.0197 = 497.5 a year
//
//	With the work found, as the run bills it (first, a year):
//	  ice     174.1 + 90.49 × 7.0197 = 809.3; /7.0197 = 115.3 a year
//	  small   1874 + 26.59 × 7.0197 - 213 × 0.7894
//	           + 264 × (0.8375 - 0.6667 × 0.7894), the battery renewed in year 6 and 4 of its 6 years unused = 1975;
//	           /7.0197 = 281.3 a year
//	  larger  3754 + 70.57 × 7.0197 - 495 × 0.7894
//	           + 264 × (0.8375 - 0.6667 × 0.7894), the battery renewed in year 6 and 4 of its 6 years unused = 3941;
//	           /7.0197 = 561.4 a year
//	Even     small: whatever the nights 281.3 - 26.59 + 26 = 280.7, ice 24.8; a night 0.04917, ice 7.541: 34.2 nights
//	Even     larger: whatever the nights 561.4 - 70.57 + 70 = 560.8, ice 24.8; a night 0.0475, ice 7.541: 71.5 nights
func TestSandpiperByHand(t *testing.T) {
	sheet := runOf(t, "sandpiper").sheet
	holdToPage(t, sheet, []handRow{
		{"box/volume_l", 45.31},
		{"box/ua_drawn_w_per_k", 1.734},
		{"box/ua_w_per_k", 1.734},
		{"box/heat_by_source/top/ua_w_per_k", 0.2155},
		{"box/heat_by_source/bottom/ua_w_per_k", 0.1791},
		{"box/heat_by_source/inboard wall, with the lid/ua_w_per_k", 0.1896},
		{"box/heat_by_source/outboard wall/ua_w_per_k", 0.2288},
		{"box/heat_by_source/lid seal/ua_w_per_k", 0.49},
		{"box/heat_by_source/edges and corners/ua_w_per_k", 0.05164},
		{"box/heat_by_source_month", 6},
		{"months/6/cabin_c", 26.4},
		{"months/6/leak_w", 37.38},
		{"months/6/openings_w", 0.06639},
		{"months/6/goods_w", 0.7767},
		{"months/6/heat_gain_w", 38.22},
		{"months/6/ice_kg_per_day", 9.656},
		{"box/ice_capacity_kg", 8.457},
		{"unit_figures/small/condenser_c", 41.4},
		{"unit_figures/small/plate_c", -7.216},
		{"unit_figures/small/capacity_w", 69.97},
		{"unit_figures/small/cop", 1.805},
		{"unit_figures/small/run_share", 0.5466},
		{"months/6/small_wh_per_day", 550.2},
		{"unit_figures/small/pull_down_h", 2.629},
		{"unit_figures/larger/condenser_c", 41.4},
		{"unit_figures/larger/plate_c", -7.216},
		{"unit_figures/larger/capacity_w", 116.6},
		{"unit_figures/larger/cop", 1.805},
		{"unit_figures/larger/run_share", 0.328},
		{"months/6/larger_wh_per_day", 534.5},
		{"unit_figures/larger/pull_down_h", 1.34},
		{"months/6/solar_wh_per_day", 64.49},
		{"options/ice/as_told/first_cost", 0},
		{"options/ice/as_told/per_year", 56.09},
		{"options/ice/as_told/present_cost", 393.7},
		{"options/ice/as_told/yearly_equivalent", 56.09},
		{"options/dry/as_told/first_cost", 0},
		{"options/dry/as_told/per_year", 3.6},
		{"options/dry/as_told/present_cost", 25.27},
		{"options/dry/as_told/yearly_equivalent", 3.6},
		{"options/small/as_told/first_cost", 1490},
		{"options/small/as_told/per_year", 29.11},
		{"options/small/as_told/present_cost", 1526},
		{"options/small/as_told/yearly_equivalent", 217.4},
		{"options/larger/as_told/first_cost", 3370},
		{"options/larger/as_told/per_year", 73.09},
		{"options/larger/as_told/present_cost", 3492},
		{"options/larger/as_told/yearly_equivalent", 497.5},
		{"options/ice/fitted/present_cost", 809.3},
		{"options/ice/fitted/yearly_equivalent", 115.3},
		{"options/small/fitted/present_cost", 1975},
		{"options/small/fitted/yearly_equivalent", 281.3},
		{"options/larger/fitted/present_cost", 3941},
		{"options/larger/fitted/yearly_equivalent", 561.4},
		{"break_even/small/nights_per_year", 34.16},
		{"break_even/larger/nights_per_year", 71.53},
	})
}
