/** The body every test asks for, unless it says otherwise: half-way between the reference woman (1.735 m, 61.9 kg) and man (1.741 m, 73.0 kg). */
export const ATHLETE = { stature_m: 1.738, mass_kg: 67.45 }
