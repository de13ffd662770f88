export const SPEED_OF_LIGHT_MPS = 299_792_458; // exact by definition of the metre (SI)
