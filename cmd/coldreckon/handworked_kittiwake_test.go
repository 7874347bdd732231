package main

import "testing"

// TestKittiwakeByHand holds the program to this page.
//
//	Kittiwake, Cyclades, July: the hottest month aboard
//
//	Box      110 L as 1 : 1 : 1.1: side 0.4642 m, height 0.5106 m; foam 50 mm, top 30 mm, bottom wet
//	Foam     k = 0.028 exp(6 × 0.04) = 0.0356 W/m·K; wet 0.0575
//	                   area     1/h + t/k + 1/h              R        U       UA      U·t
//	  top      0.2154  0.1639 + 0.843 + 0.1639 = 1.171  0.854  0.1840  0.0256
//	  bottom   0.2154  0.1075 + 0.869 + 0.1075 = 1.084  0.922  0.1987  0.0461
//	  inboard  0.2370  0.1205 + 1.405 + 0.1205 = 1.646  0.608  0.1440  0.0304
//	  outboard 0.2370  0.1205 + 1.405 + 0.0020 = 1.527  0.655  0.1552  0.0327
//	  fore     0.2370  0.1205 + 1.405 + 0.1205 = 1.646  0.608  0.1440  0.0304
//	  aft      0.2370  0.1205 + 1.405 + 0.1205 = 1.646  0.608  0.1440  0.0304
//	  sum of faces 0.970; U·t counts by (t - 10 mm)/10 mm up to 20 mm
//	Edges    0.54 × inside length × mean U·t, twelve of them: 0.1009; corners, eight: 0.0018
//	Seal     0.2 × 1.500 m = 0.300; drain trapped: 0
//	Drawn    1.373 W/K: to the cabin 1.200, sea 0.173
//
//	Cabin    25.7 + 2 = 27.70 °C; half the range 3.80 K; 7 to 21 h 29.63 °C; sea 24.0 °C; food 4 °C
//	Leak     1.200 × 23.70 + 0.173 × 20.00 = 31.9 W
//	Openings w 0.01502; 68.2 - 16.6 = 51.6 kJ/kg; cold air 1.263 kg/m³; free air 0.5 × (110.0 - 36.7) = 36.7 L
//	         15 × 0.3 × 0.03667 × 1.263 × 51.6/86.4 = 0.1245 W
//	Goods    perishables 0.72 kg/d × 3.5 × (8 - 4)/86.4 = 0.117; drinks 2.8 kg/d × 4.19 × 23.70/86.4 = 3.218: 3.335 W
//	Gain     35.36 W; ice 86.4 × 35.36/342.0 = 8.93 kg/d
//	         a load 110.0 × 0.333 × 0.56 = 20.5 kg
//	Holds    0.15 × 110.0 + jars 40 + 3.5 × 1.44 + 4.19 × 2.8 = 73.27 kJ/K
//
//	Small    50 W, ducted fan: Tc 27.70 + 12 = 39.7; 50 × (1 - 0.008 × (39.7 - 45)) = 52.1 W; plate 5 × 1 = 5 W/K
//	         Te -7.61: 52.1 exp(0.045 × 2.39) = 5 × 11.61 = 58.0 W
//	         COP 0.33 × 265.54/47.3 = 1.853; 58.0/1.853 + 3 = 34.3 W; runs 35.41/58.0 = 0.6105;
//	           24 × (0.6105 × 34.3 + 0.1) = 505.0 Wh/d
//	         from 27.7 °C, 73.27 kJ/K down to 4 °C against what leaks in meanwhile, in steps of 0.05 K: 9.21 h
//	Larger   95 W, sea: Tc 24.00 + 6 = 30.0; 95 × (1 - 0.008 × (30.0 - 45)) = 106.4 W; plate 8 × 1.9 = 15.2 W/K
//	         stores: Te -10, cools 106.4 W
//	         COP 0.33 × 263.15/40.0 = 2.171; 106.4/2.171 + 3 = 52.0 W; runs 35.40/106.4 = 0.3327;
//	           24 × (0.3327 × 52.0 + 0.1) = 417.6 Wh/d
//	Sun      the 15th, 37.3° N: declination 0.369, sunset 1.870 rad; a 0.777, b 0.312;
//	           sum of the hours' squares 0.0927
//	         7.22 kWh × 0.0927 = 669 W/m², air 27.7, cells 27.7 + 25 × 669/800 = 48.6: 0.906
//	         160 × 7.22 × 0.85 × 0.96 × 0.94 × 0.906 = 802.8 Wh/d
//
//	Money, 8 years, 120 nights; to be sold;
//	           a year each year is worth 7.0197 now. Perishables aboard 0.72 × 4/2 = 1.44 kg.
//	  ice     853.2 kg (run) × 1.6 + 90 errands (run) × 5
//	           + spoiled 1.44 × 117.3 warm days (run) × 0.80 = 1950 a year; × 7.0197 = 1.369e+04
//	  dry     2 × 120 × 1.2 = 288 a year; × 7.0197 = 2022
//	  small   first 950 + 120 + 70 = 1140;
//	           upkeep 19 + shore 3.963 × 0.35 + engine 30.21 × 1.5 + wear 23.78 × 0.73
//	           + spoiled 1.44 × 0.25 warm days (run) × 0.80 = 83.35 a year
//	          1140 + 83.35 × 7.0197 - 0.15 × 1070 × 0.7894 = 1598; /7.0197 = 227.6 a year
//	  larger  first 2700 + 500 + 70 + 500 + 350 = 4120;
//	           upkeep 67.5 + shore 3.417 × 0.35 + engine 27.32 × 1.5 + wear 21.23 × 0.73 = 125.2 a year
//	          4120 + 125.2 × 7.0197 - 0.15 × 3200 × 0.7894 = 4620; /7.0197 = 658.1 a year
//
//	With the work found, as the run bills it (first, a year):
//	  ice     257.9 + 1515 × 7.0197 = 1.089e+04; /7.0197 = 1552 a year
//	  small   1140 + seal 25; 1165 + 76.20 × 7.0197 - 0.15 × 1070 × 0.7894 = 1573; /7.0197 = 224.1 a year
//	  larger  4120 + 125.2 × 7.0197 - 480 × 0.7894 = 4620; /7.0197 = 658.1 a year
//	Even     small: whatever the nights 224.1 - 76.20 + 19 = 166.9, ice 36.7;
//	           a night (76.20 - 19) / 120 = 0.4767, ice 12.62: 10.72 nights
//	Even     larger: whatever the nights 658.1 - 125.2 + 67.5 = 600.4, ice 36.7;
//	           a night 0.4808, ice 12.62: 46.4 nights
func TestKittiwakeByHand(t *testing.T) {
	sheet := runOf(t, "kittiwake").sheet
	holdToPage(t, sheet, []handRow{
		{"box/volume_l", 110},
		{"box/ua_drawn_w_per_k", 1.373},
		{"box/ua_w_per_k", 1.373},
		{"box/heat_by_source/top, with the lid/ua_w_per_k", 0.184},
		{"box/heat_by_source/bottom/ua_w_per_k", 0.1987},
		{"box/heat_by_source/inboard wall/ua_w_per_k", 0.144},
		{"box/heat_by_source/outboard wall/ua_w_per_k", 0.1552},
		{"box/heat_by_source/fore wall/ua_w_per_k", 0.144},
		{"box/heat_by_source/aft wall/ua_w_per_k", 0.144},
		{"box/heat_by_source/lid seal/ua_w_per_k", 0.3},
		{"box/heat_by_source/edges and corners/ua_w_per_k", 0.1028},
		{"box/heat_by_source_month", 7},
		{"months/7/cabin_c", 27.7},
		{"months/7/leak_w", 31.9},
		{"months/7/openings_w", 0.1245},
		{"months/7/goods_w", 3.335},
		{"months/7/heat_gain_w", 35.36},
		{"months/7/ice_kg_per_day", 8.933},
		{"box/ice_capacity_kg", 20.53},
		{"unit_figures/small/condenser_c", 39.7},
		{"unit_figures/small/plate_c", -7.61},
		{"unit_figures/small/capacity_w", 58.05},
		{"unit_figures/small/cop", 1.853},
		{"unit_figures/small/run_share", 0.6105},
		{"months/7/small_wh_per_day", 505},
		{"unit_figures/small/pull_down_h", 9.21},
		{"unit_figures/larger/condenser_c", 30},
		{"unit_figures/larger/plate_c", -10},
		{"unit_figures/larger/capacity_w", 106.4},
		{"unit_figures/larger/cop", 2.171},
		{"unit_figures/larger/run_share", 0.3327},
		{"months/7/larger_wh_per_day", 417.6},
		{"months/7/solar_wh_per_day", 802.8},
		{"options/ice/as_told/first_cost", 0},
		{"options/ice/as_told/per_year", 1950},
		{"options/ice/as_told/present_cost", 13690},
		{"options/ice/as_told/yearly_equivalent", 1950},
		{"options/dry/as_told/first_cost", 0},
		{"options/dry/as_told/per_year", 288},
		{"options/dry/as_told/present_cost", 2022},
		{"options/dry/as_told/yearly_equivalent", 288},
		{"options/small/as_told/first_cost", 1140},
		{"options/small/as_told/per_year", 83.35},
		{"options/small/as_told/present_cost", 1598},
		{"options/small/as_told/yearly_equivalent", 227.6},
		{"options/larger/as_told/first_cost", 4120},
		{"options/larger/as_told/per_year", 125.2},
		{"options/larger/as_told/present_cost", 4620},
		{"options/larger/as_told/yearly_equivalent", 658.1},
		{"options/ice/fitted/present_cost", 10890},
		{"options/ice/fitted/yearly_equivalent", 1552},
		{"options/small/fitted/present_cost", 1573},
		{"options/small/fitted/yearly_equivalent", 224.1},
		{"options/larger/fitted/present_cost", 4620},
		{"options/larger/fitted/yearly_equivalent", 658.1},
		{"break_even/small/nights_per_year", 10.72},
		{"break_even/larger/nights_per_year", 46.4},
	})
}
