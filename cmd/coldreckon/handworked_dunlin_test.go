package main

import "testing"

// TestDunlinByHand holds the program to this page.
//
//	Dunlin, Maine coast, August: the hottest month aboard
//
//	Box      20 × 18 × 20 in = 0.508 × 0.457 × 0.508 m; foam 38.1 mm, top 12.7 mm (told)
//	Foam     k = 0.028 exp(6 × 0.04) = 0.0356 W/m·K
//	                   area     1/h + t/k + 1/h              R        U       UA      U·t
//	  top      0.2323  0.1639 + 0.357 + 0.1639 = 0.685  1.461  0.3392  0.0050
//	  bottom   0.2323  0.1075 + 1.070 + 0.1075 = 1.285  0.778  0.1807  0.0296
//	  inboard  0.2581  0.1205 + 1.070 + 0.1205 = 1.311  0.763  0.1968  0.0291
//	  outboard 0.2581  0.1205 + 1.070 + 0.0020 = 1.193  0.838  0.2163  0.0319
//	  fore     0.2323  0.1205 + 1.070 + 0.1205 = 1.311  0.763  0.1771  0.0291
//	  aft      0.2323  0.1205 + 1.070 + 0.1205 = 1.311  0.763  0.1771  0.0291
//	  sum of faces 1.287; U·t counts by (t - 10 mm)/10 mm up to 20 mm
//	Edges    0.54 × inside length × mean U·t, twelve of them: 0.0822; corners, eight: 0.0011
//	Seal     0.35 × 1.422 m = 0.498; drain open: 0.15
//	Drawn    2.018 W/K: to the cabin 1.595, sea 0.232, engine space 0.191
//	Remembered ice, read by the run: 2.59 W/K, log-sd 0.884, for so small a load tells little (0.30/0.34)
//	Together exp((16 ln 2.018 + 1.28 ln 2.59)/17.28) = 2.056 W/K
//	         all parts × 1.0186
//
//	Cabin    18.7 + 2 = 20.70 °C; half the range 4.95 K; 7 to 21 h 23.22 °C; sea 17.8 °C; food 4.44 °C
//	Leak     1.0186 × (1.595 × 16.26 + 0.232 × 13.36 + 0.191 × (16.26 + 8 × 1/24)) = 32.8 W
//	Openings w 0.01184; 53.5 - 17.5 = 36.0 kJ/kg; cold air 1.261 kg/m³; free air 0.5 × (118.0 - 39.3) = 39.3 L
//	         12 × 0.3 × 0.03933 × 1.261 × 36.0/86.4 = 0.07436 W
//	Goods    perishables 0.6532 kg/d × 3.5 × (8 - 4.44)/86.4 = 0.0941;
//	           drinks 2.1 kg/d × 4.19 × 16.26/86.4 = 1.655: 1.75 W
//	Gain     34.63 W; ice 86.4 × 34.63/342.0 = 8.75 kg/d
//	         a load 118.0 × 0.333 × 0.56 = 22 kg
//	Holds    0.15 × 118.0 + jars 40 + 3.5 × 0.9798 + 4.19 × 2.1 = 69.93 kJ/K
//
//	Rating   0.55 A at 12 V for 3.9 cu ft = 110.4 L. A maker's box: cube of 0.480 m, 50 mm of k 0.024, seal 0.08 × 4
//	           × 0.8 × 0.480:
//	         0.785 W/K, 12.17 W at 21 °C round 5.5 °C;
//	           60 W with a fan there: Tc 33, 65.8 W, Te -7.03, cools 75.2 W, Carnot 6.65
//	         compressor 6.6 - 0.1 - 3 × 12.17/75.2 = 6.01 W; η = 12.17/6.65/6.01 = 0.304
//	         its width, foam 40 to 80 mm and air 18 to 25 °C on a box of 100 L: √(0.150² + 0.319²) + √(0.298²
//	           + 0.288²) = 0.766,
//	         against ln(0.42/0.26) = 0.480: weights 1.70 and 4.35: exp((1.70 ln 0.304 + 4.35 ln 0.33)/6.05) = 0.3226
//	Small    60 W, fins: Tc 20.70 + 20 = 40.7; 60 × (1 - 0.008 × (40.7 - 45)) = 62.1 W; plate 5 × 1.2 = 6 W/K
//	         Te -7.26: 62.1 exp(0.045 × 2.74) = 6 × 11.70 = 70.2 W
//	         COP 0.3226 × 265.89/48.0 = 1.789; 70.2/1.789 = 39.3 W; runs 34.66/70.2 = 0.4936;
//	           24 × (0.4936 × 39.3 + 0.1) = 467.5 Wh/d
//	         from 20.7 °C, 69.93 kJ/K down to 4.44 °C against what leaks in meanwhile, in steps of 0.05 K: 4.91 h
//	Larger   100 W, fan in its locker: Tc 20.70 + 15 = 35.7; 100 × (1 - 0.008 × (35.7 - 45)) = 107.4 W;
//	           plate 5 × 2 = 10 W/K
//	         Te -7.55: 107.4 exp(0.045 × 2.45) = 10 × 12.00 = 120.0 W
//	         COP 0.33 × 265.60/43.3 = 2.026; 120.0/2.026 + 3 = 62.2 W; runs 34.66/120.0 = 0.2889;
//	           24 × (0.2889 × 62.2 + 0.1) = 433.7 Wh/d
//	         from 20.7 °C, 69.93 kJ/K down to 4.44 °C against what leaks in meanwhile, in steps of 0.05 K: 2.48 h
//	Sun      the 15th, 44.07° N: declination 0.239, sunset 1.809 rad; a 0.755, b 0.332;
//	           sum of the hours' squares 0.0955
//	         5.21 kWh × 0.0955 = 497 W/m², air 21.3, cells 21.3 + 43 × 497/800 = 48.1: 0.908
//	         30 × 5.21 × 0.75 × 0.8 × 0.94 × 0.908 = 80.02 Wh/d
//
//	Money, 10 years, 60 nights; a year each year is worth 8.5302 now. Perishables aboard 0.6532 × 3/2 = 0.9798 kg.
//	  ice     544.3 kg (run) × 1.102 + 0 errands (run) × 4
//	           + spoiled 0.9798 × 56.5 warm days (run) × 0.80 = 644.3 a year; × 8.5302 = 5496
//	  dry     2 × 60 × 1.6 = 192 a year; × 8.5302 = 1638
//	  small   first 1000 + 120 + 70 = 1190;
//	           upkeep 20 + shore 3.884 × 0.35 + engine 7.901 × 1.5 + wear 14.98 × 0.73
//	           + spoiled 0.9798 × 45.25 warm days (run) × 0.80 = 79.61 a year
//	          1190 + 79.61 × 8.5302 = 1869; /8.5302 = 219.1 a year
//	  larger  first 2600 + 500 + 70 = 3170;
//	           upkeep 65 + shore 3.774 × 0.35 + engine 7.869 × 1.5 + wear 15.16 × 0.73
//	           + spoiled 0.9798 × 41.6 warm days (run) × 0.80 = 121.8 a year
//	          3170 + 121.8 × 8.5302 = 4209; /8.5302 = 493.4 a year
//
//	With the work found, as the run bills it (first, a year):
//	  ice     seal 25, trap 20, lid 40, foam 1.1761 m² × 150: 261.4 + 728.8 × 8.5302 = 6478; /8.5302 = 759.4 a year
//	  small   1190 + seal 25, trap 20, foam 0.9806 m² × 150, panel 175 = 1557;
//	           1557 + 36.07 × 8.5302 = 1865; /8.5302 = 218.6 a year
//	  larger  3170 + the same = 3537; 3537 + 80.01 × 8.5302 = 4220; /8.5302 = 494.7 a year
//	Even     small: whatever the nights 218.6 - 36.07 + 20 = 202.5, ice 30.65; a night 0.2678, ice 12.15: 14.5 nights
//	Even     larger: whatever the nights 494.7 - 80.01 + 65 = 479.7, ice 30.65; a night 0.2502, ice 12.15: 37.7 nights
func TestDunlinByHand(t *testing.T) {
	sheet := runOf(t, "dunlin").sheet
	holdToPage(t, sheet, []handRow{
		{"box/volume_l", 118},
		{"box/ua_drawn_w_per_k", 2.018},
		{"box/ua_w_per_k", 2.056},
		{"box/heat_by_source/top, with the lid/ua_w_per_k", 0.3456},
		{"box/heat_by_source/bottom/ua_w_per_k", 0.1841},
		{"box/heat_by_source/inboard wall/ua_w_per_k", 0.2005},
		{"box/heat_by_source/outboard wall/ua_w_per_k", 0.2204},
		{"box/heat_by_source/fore wall/ua_w_per_k", 0.1804},
		{"box/heat_by_source/aft wall/ua_w_per_k", 0.1804},
		{"box/heat_by_source/lid seal/ua_w_per_k", 0.5071},
		{"box/heat_by_source/drain/ua_w_per_k", 0.1528},
		{"box/heat_by_source/edges and corners/ua_w_per_k", 0.08485},
		{"box/heat_by_source_month", 8},
		{"months/8/cabin_c", 20.7},
		{"months/8/leak_w", 32.8},
		{"months/8/openings_w", 0.07436},
		{"months/8/goods_w", 1.75},
		{"months/8/heat_gain_w", 34.63},
		{"months/8/ice_kg_per_day", 8.748},
		{"box/ice_capacity_kg", 22.02},
		{"unit_figures/small/eta", 0.3226},
		{"unit_figures/small/rated_cooling_w", 60},
		{"unit_figures/small/condenser_c", 40.7},
		{"unit_figures/small/plate_c", -7.258},
		{"unit_figures/small/capacity_w", 70.21},
		{"unit_figures/small/cop", 1.789},
		{"unit_figures/small/run_share", 0.4936},
		{"months/8/small_wh_per_day", 467.5},
		{"unit_figures/small/pull_down_h", 4.911},
		{"unit_figures/larger/condenser_c", 35.7},
		{"unit_figures/larger/plate_c", -7.551},
		{"unit_figures/larger/capacity_w", 120},
		{"unit_figures/larger/cop", 2.026},
		{"unit_figures/larger/run_share", 0.2889},
		{"months/8/larger_wh_per_day", 433.7},
		{"unit_figures/larger/pull_down_h", 2.484},
		{"months/8/solar_wh_per_day", 80.02},
		{"options/ice/as_told/first_cost", 0},
		{"options/ice/as_told/per_year", 644.3},
		{"options/ice/as_told/present_cost", 5496},
		{"options/ice/as_told/yearly_equivalent", 644.3},
		{"options/dry/as_told/first_cost", 0},
		{"options/dry/as_told/per_year", 192},
		{"options/dry/as_told/present_cost", 1638},
		{"options/dry/as_told/yearly_equivalent", 192},
		{"options/small/as_told/first_cost", 1190},
		{"options/small/as_told/per_year", 79.61},
		{"options/small/as_told/present_cost", 1869},
		{"options/small/as_told/yearly_equivalent", 219.1},
		{"options/larger/as_told/first_cost", 3170},
		{"options/larger/as_told/per_year", 121.8},
		{"options/larger/as_told/present_cost", 4209},
		{"options/larger/as_told/yearly_equivalent", 493.4},
		{"options/ice/fitted/present_cost", 6478},
		{"options/ice/fitted/yearly_equivalent", 759.4},
		{"options/small/fitted/present_cost", 1865},
		{"options/small/fitted/yearly_equivalent", 218.6},
		{"options/larger/fitted/present_cost", 4220},
		{"options/larger/fitted/yearly_equivalent", 494.7},
		{"break_even/small/nights_per_year", 14.47},
		{"break_even/larger/nights_per_year", 37.74},
	})
}
