/** Loaded before the program: sets its clock to the day it is told, in a year nobody expects. */
const REAL = Date
const moved_ms = new REAL(process.env.ANOTHER_DAY ?? '').getTime() - REAL.now()
globalThis.Date = class extends REAL {
  constructor(...given) {
    if (given.length === 0) super(REAL.now() + moved_ms)
    else super(...given)
  }
  static now() {
    return REAL.now() + moved_ms
  }
}
