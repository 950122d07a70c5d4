/** The lowest index of the table; each entry after it is one index higher. */
export const FIRST_LOAD_INDEX = 50;

/**
 * Load capacity in kg by load index, from 50 to 180.
 * Source: load-capacity index of UN Regulations No. 30 and No. 54 (their annex tables were not read); the values
 * agree in at least five unrelated public copies up to 150, three up to 160 and two up to 180.
 * Valid at the pressure and speed the tire maker states.
 */
// biome-ignore format: ten indices a line, so that a row can be checked against a printed table.
export const LOAD_INDEX_KG: readonly number[] = [
  190, 195, 200, 206, 212, 218, 224, 230, 236, 243, // 50
  250, 257, 265, 272, 280, 290, 300, 307, 315, 325, // 60
  335, 345, 355, 365, 375, 387, 400, 412, 425, 437, // 70
  450, 462, 475, 487, 500, 515, 530, 545, 560, 580, // 80
  600, 615, 630, 650, 670, 690, 710, 730, 750, 775, // 90
  800, 825, 850, 875, 900, 925, 950, 975, 1000, 1030, // 100
  1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360, // 110
  1400, 1450, 1500, 1550, 1600, 1650, 1700, 1750, 1800, 1850, // 120
  1900, 1950, 2000, 2060, 2120, 2180, 2240, 2300, 2360, 2430, // 130
  2500, 2575, 2650, 2725, 2800, 2900, 3000, 3075, 3150, 3250, // 140
  3350, 3450, 3550, 3650, 3750, 3875, 4000, 4125, 4250, 4375, // 150
  4500, 4625, 4750, 4875, 5000, 5150, 5300, 5450, 5600, 5800, // 160
  6000, 6150, 6300, 6500, 6700, 6900, 7100, 7300, 7500, 7750, // 170
  8000, // 180
];
