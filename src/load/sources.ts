/** Where a number comes from. Each full citation stands once, here. */
export type Source = {
  readonly cite: string
  readonly doi?: string
  /** How far the number was followed back: seen in the source or two agreeing transcriptions; computed from open data; or from memory. */
  readonly seen: 'seen' | 'computed from open data' | 'from memory' | 'arithmetic'
}

/** The name a source is cited by. */
export type SourceKey = keyof typeof sources

/** Every source the models and pages may cite, by author and year. */
export const sources = {
  deLeva1996: {
    cite: 'de Leva P 1996, "Adjustments to Zatsiorsky-Seluyanov\'s segment inertia parameters", J Biomech 29(9):1223–1230',
    doi: '10.1016/0021-9290(95)00178-6',
    seen: 'seen',
  },
  winter2009: { cite: 'Winter DA 2009, Biomechanics and Motor Control of Human Movement, 4th ed., Table 4.1 and Fig. 4.1', seen: 'seen' },
  drillisContini1966: { cite: 'Drillis R, Contini R 1966, body segment parameters, as drawn in Winter 2009, Fig. 4.1', seen: 'seen' },
  gordon2014: {
    cite: 'Gordon CC and others 2014, 2012 Anthropometric Survey (ANSUR II), NATICK/TR-15/007, public domain; means and SD computed from its 4,082 men and 1,986 women',
    seen: 'computed from open data',
  },
  cgpm1901: { cite: '3rd General Conference on Weights and Measures 1901: standard gravity 9.80665 m/s² exactly', seen: 'seen' },
  mier2014: { cite: 'Mier CM and others 2014, Int J Exerc Sci 7(2):161–168', seen: 'seen' },
  suprak2011: { cite: 'Suprak DN and others 2011, J Strength Cond Res 25(2):497–503', seen: 'from memory' },
  ebben2011: { cite: 'Ebben WP and others 2011, J Strength Cond Res 25(10):2891–2894', seen: 'from memory' },
  melroseDawes2015: { cite: 'Melrose D, Dawes J 2015, J Athl Enhancement 4(1)', seen: 'seen' },
  epley1985: { cite: 'Epley B 1985, poundage chart', seen: 'seen' },
  brzycki1993: { cite: 'Brzycki M 1993, JOPERD 64(1):88–90', seen: 'seen' },
  lombardi1989: { cite: 'Lombardi VP 1989, Beginning Weight Training', seen: 'seen' },
  mayhew1992: { cite: 'Mayhew JL and others 1992, J Appl Sport Sci Res 6(4):200–206', seen: 'seen' },
  oConner1989: { cite: "O'Conner B, Simmons J, O'Shea P 1989, Weight Training Today", seen: 'seen' },
  wathan1994: { cite: 'Wathan D 1994, load assignment, in Essentials of Strength Training and Conditioning', seen: 'seen' },
  reynolds2006: { cite: 'Reynolds JM, Gordon TJ, Robergs RA 2006, J Strength Cond Res 20(3):584–592', seen: 'seen' },
  mcMaster2010: { cite: 'McMaster DT and others 2010, J Strength Cond Res 24:2056–2064', seen: 'seen' },
  emerson2014: { cite: 'Emerson and others 2014, International Society of Biomechanics in Sports, proceedings', seen: 'seen' },
  zhang2000: { cite: 'Zhang SN and others 2000, Med Sci Sports Exerc 32:812–819', seen: 'seen' },
  minetti1998: { cite: 'Minetti AE and others 1998, Ergonomics 41:1771–1791', seen: 'seen' },
  levy2015: { cite: 'Levy D and others 2015, Sports Eng 18:227–239', seen: 'seen' },
  acsm2009: { cite: 'American College of Sports Medicine 2009, position stand, Med Sci Sports Exerc 41(3):687–708', seen: 'seen' },
  thomee1997: { cite: 'Thomeé R 1997, Phys Ther 77:1690–1703', seen: 'from memory' },
  caterisano2019: { cite: 'Caterisano A and others 2019, Strength Cond J 41(3):1–23', seen: 'from memory' },
  osha1926: { cite: '29 CFR 1926.502(d)(15): an anchorage carries 22.2 kN per person or has a safety factor of at least 2', seen: 'seen' },
  mechanics: { cite: 'Statics and kinematics of rigid bodies: arithmetic anyone can repeat', seen: 'arithmetic' },
} as const satisfies Record<string, Source>
