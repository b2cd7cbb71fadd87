/** What a key is for, in a coach's words, and one value it may hold. */
export type KeyNote = { readonly says: string; readonly example: unknown }

const STANDARD = { sets: 3, reps: 12, sessions: 2, rest_s: 90, reserve_reps: 2 }
const SUPPORTED = { model: 'supported-body', facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 45 }
const BENCH = { id: 'bench-hands', title: 'Hands on a bench', load: SUPPORTED }
const GONE = { id: 'bar-95', heir: 'bar-90', because: 'the racks have no hole at 95 cm' }
const DAY = '2026-10-03'

const note = (says: string, example: unknown): KeyNote => ({ says, example })

/** The amount, the sets and what goes with them: said of a standard and of a rung's own entry. */
const amounts = (at: string): Record<string, KeyNote> => ({
  [`${at}.sets`]: note('How many sets.', 3),
  [`${at}.reps`]: note('Repetitions in each set. Give one of reps, seconds and metres.', 12),
  [`${at}.seconds`]: note('Seconds a set is held, where there are no repetitions.', 30),
  [`${at}.metres`]: note('Metres covered in each set, where neither repetitions nor seconds count.', 20),
  [`${at}.sessions`]: note('Sessions running in which it has to be shown.', 2),
  [`${at}.reserve_reps`]: note('Repetitions that are left in reserve at the end of each set.', 2),
})

/**
 * Every key of every file a coach writes, by its path; a name before a colon says of which file alone.
 * Keys of load models are described by the models themselves.
 */
export const keyNotes: Readonly<Record<string, KeyNote>> = {
  id: note('Short name of the ladder. It becomes the address of its page and never changes.', 'press-up'),
  title: note('What the ladder is called on its page.', 'Press-up'),
  movement: note('The kind of movement; ladders of one movement stand together.', 'horizontal press'),
  aim: note('The id of the rung the ladder exists for: easier rungs lead up to it, harder ones go beyond.', 'floor'),
  equipment: note('What has to be there, one thing an entry.', ['bench', 'mat']),
  standard: note('What must be shown on a rung before the next one.', STANDARD),
  ...amounts('standard'),
  'standard.rest_s': note('Rest between sets, in seconds.', 90),
  first_reps: note('Fewest repetitions worth beginning a new rung with.', 3),
  sessions_per_week: note('How often the ladder is trained; weeks are reckoned from it.', 2),
  form: note('The few things that must hold in every repetition for it to count.', ['one line from heel to ear', 'chest to a fist above the floor']),
  supervision: note('Who has to be there.', 'coach'),
  review: note('Who signed the ladder off, and when. rungbook review --seal writes it.', { by: 'A. Reviewer', on: DAY }),
  'review.by': note('Name of the reviewer.', 'A. Reviewer'),
  'review.on': note('Day of the review.', DAY),
  'review.seal': note('Digest of the criteria that were reviewed. Written by rungbook review --seal, never by hand.', '5f2c19ab03de'),
  sources: note('What is cited on this ladder.', [{ id: 'club-trial', cite: 'Our own trial of twelve athletes, spring 2026' }]),
  'sources.id': note('Short name by which a rung points at the source.', 'club-trial'),
  'sources.cite': note('The source, as it is printed.', 'Our own trial of twelve athletes, spring 2026'),
  'sources.doi': note('Its DOI, without the address before it.', '10.0000/example'),
  retired: note('Rungs that were taken out, and which takes the place of each, so that an athlete on one finds the way.', [GONE]),
  'retired.id': note('The id the rung had.', GONE.id),
  'retired.heir': note('The id of the rung that takes its place.', GONE.heir),
  'retired.because': note('Why it was taken out.', GONE.because),
  silence: note('A rule that is wrong in one place, kept quiet there with a reason and an end.', [{ rule: 'steps-are-climbable', rung: 'floor', because: 'we spot this step', until: '2027-03-01' }]),
  'silence.rule': note('Name of the rule.', 'steps-are-climbable'),
  'silence.rung': note('The id of the rung it is kept quiet on; the whole ladder unless given.', 'floor'),
  'silence.because': note('Why the rule is wrong here.', 'we spot this step'),
  'silence.until': note('The day on which the silence ends.', '2027-03-01'),
  stop: note('Signs at which to stop.', ['sharp or spreading pain', 'form lost twice in a set']),
  ask_first: note('Who sees a clinician before starting.', ['a shoulder operated on in the last year']),
  rungs: note('The versions of the movement, the easiest first.', [BENCH]),
  'rungs.id': note('Short name of the rung, its own within the ladder. It becomes part of its address.', 'bench-hands'),
  'rungs.title': note('What the rung is called; the heading of its section says the same.', 'Hands on a bench'),
  'rungs.after': note('Ids of the rungs it follows; the one above it in the file unless given. An empty list begins a new branch.', ['floor']),
  'rungs.demand': note('What makes it harder besides load.', ['one side', 'balance']),
  'rungs.entry': note('What must be shown on the rung before, where that differs from the standard.', { reps: 15 }),
  ...amounts('rungs.entry'),
  'rungs.load': note('The load model, and the measurements it asks for.', SUPPORTED),
  'rungs.load.model': note('Name of the load model.', 'supported-body'),
  'rungs.supervision': note('Who has to be there on this rung; as on the ladder unless given.', 'partner'),
  'rungs.equipment': note('What this rung needs besides the ladder’s list.', ['two straps']),
  'rungs.form': note('Form points that hold on this rung alone.', ['both hands leave together']),
  'rungs.cautions': note('What could hurt somebody on this rung, and what prevents it.', ['Let a competent person rate the anchor.']),
  'rungs.first_side': note('Which side goes first, on a rung that is done one side at a time.', 'the weaker side'),

  amends: note('The id of the ladder of the curriculum below that this file changes.', 'press-up'),
  because: note('Why this layer changes it; the page says so.', 'our mats are 4 cm thick'),
  base: note('Digest of the ladder this was written for; a change below is then a finding.', '5f2c19ab03de'),
  withdraw: note('Rungs this layer takes out, and which takes the place of each.', [GONE]),
  'withdraw.id': note('The id of the rung that is taken out.', GONE.id),
  'withdraw.heir': note('The id of the rung that takes its place.', GONE.heir),
  'withdraw.because': note('Why it is taken out.', GONE.because),
  withdraw_notes: note('Safety notes this layer takes out, each with a reason and a name; the page says so.', [{ note: 'form lost twice in a set', because: 'said in our own words below', by: 'A. Reviewer' }]),
  'withdraw_notes.note': note('The note, in its exact words.', 'form lost twice in a set'),
  'withdraw_notes.because': note('Why it is taken out.', 'said in our own words below'),
  'withdraw_notes.by': note('Who answers for it.', 'A. Reviewer'),
  'amendment:stop': note('Signs at which to stop, added to those below.', ['sharp or spreading pain']),
  'amendment:ask_first': note('Who sees a clinician before starting, added to those below.', ['a shoulder operated on in the last year']),
  'amendment:rungs': note('Rungs that are changed, by their id, or added.', [{ id: 'floor', entry: { reps: 15 } }]),
  'amendment:rungs.id': note('The id of a rung of the ladder, or a new one.', 'floor'),
  'rungs.before': note('For a new rung: the id of the rung it is put in before.', 'floor'),

  'page:title': note('What the page is called.', 'Safety'),
  order: note('Where it stands among the pages; the lowest comes first.', 20),
  summary: note('What the page holds, in a sentence.', 'When to stop, and whom to ask first.'),

  translates: note('The id of the ladder or page that is said in another language here.', 'press-up'),
  of: note('Digests of what was translated. Written by rungbook translate --seal, never by hand.', { title: '3f2a91bc' }),
  'translation:title': note('What the ladder is called in this language.', 'Flexión de brazos'),
  'translation:form': note('The form points in this language, in the order of the original.', ['en línea de la oreja al talón']),
  'translation:stop': note('The stop signs in this language, in the order of the original.', ['dolor agudo']),
  'translation:ask_first': note('Who sees a clinician first, in this language, in the order of the original.', ['una operación de hombro en el último año']),
  'translation:rungs': note('The rungs in this language, by their id.', [{ id: 'floor', title: 'Manos en el suelo' }]),
  'translation:rungs.id': note('The id of the rung, as in the original.', 'floor'),
  'translation:rungs.title': note('What the rung is called in this language.', 'Manos en el suelo'),
  'page-translation:translates': note('The id of the page that is said in another language here.', 'safety'),
  'page-translation:title': note('What the page is called in this language.', 'Seguridad'),
  'page-translation:summary': note('What the page holds, in this language.', 'Cuándo parar y a quién preguntar.'),

  'handbook:title': note('What the handbook is called.', 'Tarnwick coaching handbook'),
  organisation: note('Whose handbook it is.', 'Tarnwick Gym Club'),
  edition: note('Name of this published state, in quotes.', '2026.2'),
  languages: note('Codes of its languages; the files are written in the first.', ['en']),
  units: note('Units a reader sees first.', 'metric'),
  extends: note('The curriculum it builds on: a folder beside this one, rungbook/starter, or an installed package.', 'rungbook/starter'),
  contact: note('Whom to ask, printed on every page.', 'coaching@tarnwick.example'),
  address: note('The https address at which the handbook is published; codes on cards lead there.', 'https://handbook.example'),
  logo: note('A drawing that stands beside handbook.yaml and is shown at the top of every page.', 'logo.svg'),
  offline: note('Whether devices may keep the handbook for use without a signal.', true),
  editions: note('Editions that were published, the oldest first.', [{ edition: '2026.1', on: '2026-01-15', keep: true }]),
  'editions.edition': note('Name of the edition.', '2026.1'),
  'editions.on': note('Day it was published.', '2026-01-15'),
  'editions.revision': note('The revision it was made from; the tag edition/NAME unless given.', 'edition/2026.1'),
  'editions.keep': note('Whether it stays published at its own address.', true),
  'editions.note': note('What it brought, in a sentence.', 'The rows were steepened a little.'),
  colours: note('Colours of the handbook.', { accent: '#0b5563' }),
  'colours.accent': note('The one accent colour.', '#0b5563'),
}
