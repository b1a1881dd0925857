/** Words of a heading: `exact` ones are unmistakable; `loose` ones count where no other column of the table has an exact one. */
export interface HeadingWords {
  /** As it is shown where somebody chooses what a column is. */
  readonly label: string;
  /** Over the heading in lower case, its unit and remarks in brackets taken off. */
  readonly exact: RegExp;
  readonly loose?: RegExp;
}

const END_A = '(?:a|1|one|left|first|near)';
const END_B = '(?:b|2|two|right|second|far)';
const PART = '(?:fitting|coupling|end|end fitting|connection|insert|connector|termination)';
const CUT_OFF = '(?:cut[- ]?off|cutback|deduction|minus)';
const DIAMETER = '(?:diameter|ø|dia\\.?|od)';

const TOLERANCE = '(?:tolerance|tol\\.?)';
/** `range` is not among them: it may as well mean ±. */
const WHOLE = '(?:total|full|whole|overall)';

const whole = (source: string): RegExp => new RegExp(`^(?:${source})$`);
const words = (label: string, exact: string, loose?: string): HeadingWords => ({
  label,
  exact: whole(exact),
  ...(loose === undefined ? {} : { loose: whole(loose) }),
});

/**
 * THE vocabulary: what people call the columns of their tables. Every reader takes its words from here, so that a heading means the same
 * in all views. What a word means may depend on the kind of table (`made` in a rack, `machine` beside a hose list): that is said by the
 * reader's own list of roles.
 */
export const HEADING_WORDS = {
  hose: words(
    'Hose',
    'hose|hoses|hose (?:type|part|part no\\.?|line|item|grade|style|spec|name|size|description|used|id)|hose no\\.?|type of hose',
    'tube|tubing|material|bulk hose',
  ),
  fittingA: words(
    'Fitting A',
    `${PART}s? ?${END_A}|${END_A} ${PART}|(?:fitting|coupling) ${END_A} ?end|${END_A} end ${PART}`,
    'fitting|coupling|couplings|fittings|end fitting|end|insert|connector|termination',
  ),
  fittingB: words(
    'Fitting B',
    `${PART}s? ?${END_B}|${END_B} ${PART}|other end|(?:fitting|coupling) ${END_B} ?end|${END_B} end ${PART}`,
  ),
  overall: words(
    'Overall length',
    'overall|overall length|oal|o\\.a\\.l\\.?|length overall|length over all|over ?all|assembly length|total length|finished length|finish length|made[- ]up length|length oal',
    'length|lengths|len\\.?|lgth\\.?|hose length|assembly|finished',
  ),
  cutLength: words(
    'Cut length',
    'cut length|cut len\\.?|cut to|cut at|hose cut|hose cut length|length to cut|cutting length|cut hose to|cut size|saw length',
    'cut',
  ),
  allowance: words('Allowance', 'allowance|extra|add|added length|length allowance'),
  cutOffA: words('Cut-off A', `${CUT_OFF}(?: length)?(?: (?:at|of|for))?(?: (?:end|fitting|coupling))? ?${END_A}`),
  cutOffB: words('Cut-off B', `${CUT_OFF}(?: length)?(?: (?:at|of|for))?(?: (?:end|fitting|coupling))? ?${END_B}`),
  quantity: words(
    'Quantity',
    "quantity|qty\\.?|q'ty|qnty\\.?|pcs?\\.?|pieces|how many|count|no\\. off|nos\\.?|off|number off|number of pieces|order(?:ed)? (?:qty\\.?|quantity)|(?:qty\\.?|quantity|pcs?\\.?|pieces|no\\.|number) (?:ordered|required|needed|wanted|to make|total)|total (?:qty\\.?|quantity|pcs?\\.?|pieces)",
    'number|amount|make|required',
  ),
  reels: words(
    'Number of reels',
    '(?:(?:no\\.?|nos\\.?|number|count|qty\\.?|quantity|#) (?:of )?)?(?:reels|coils|drums|rolls)|how many reels|(?:reel|coil|drum|roll) (?:count|qty\\.?|quantity)|(?:reels|coils|drums|rolls) (?:in stock|on hand|left)',
  ),
  line: words('Line', 'line|line no\\.?|job line|line item|item no\\.?', 'item|pos\\.?|position|no\\.?|#|job|job no\\.?'),
  label: words(
    'Wanted for',
    'label|wanted for|what for|for what|purpose|for|used on|used for|description|mark|equipment|vehicle|application|where used|unit no\\.?|fits|place of use',
    'name|machine|asset|type of machine',
  ),
  assembly: words(
    'Assembly number',
    'assembly no\\.?|assembly number|assembly id|serial|serial no\\.?|serial number|tag|tag no\\.?|tag number',
    'assembly',
  ),
  order: words('Order', 'order|order no\\.?|order number|work order|w\\.?o\\.?|wo no\\.?|job order|p\\.?o\\.?|po no\\.?'),
  due: words('Due', 'due|due date|wanted by|needed by|required by|deliver(?:y)?(?: by| date)?|ship date'),
  status: words('Status', 'status|state|progress|stage|done|finished|complete|completed|job status', 'made|cut|crimped|tested'),
  stockStatus: words(
    'Status',
    'status|state|stock status|quality status|condition|release status|availability|blocked|quarantined?|reserved(?: for)?',
  ),
  shortest: words('Shortest', 'shortest|shortest length|min\\.? length|minimum length', 'min\\.?|minimum'),
  longest: words('Longest', 'longest|longest length|max\\.? length|maximum length', 'max\\.?|maximum'),
  bore: words('Bore', 'bore|inside diameter|bore diameter|hose bore|i\\.?d\\.?'),
  twist: words('Twist angle', 'twist|twist angle|orientation|turn|angle between ends|clocking'),
  pressure: words(
    'Working pressure',
    'working pressure|maximum working pressure|max\\.? working pressure|wp|w\\.p\\.|rated pressure|pressure rating',
    'pressure|max\\.? pressure',
  ),
  temperature: words('Temperature', 'temperature|temp\\.?|hottest|max\\.? temp(?:erature|\\.)?|oil temp(?:erature|\\.)?'),
  fluid: words('Fluid', 'fluid|medium|oil|fluid type'),
  guard: words('Guard', 'guard|guards|sleeve|sleeves|protection|sleeving|spiral guard'),
  note: words('Note', 'note|notes|remark|remarks|comment|comments'),
  check: words('Check', 'check|assembly check'),
  crimper: words('Crimper', 'crimper|crimped on|press|crimping machine|crimp machine|crimping press'),
  machine: words('Machine', 'machine'),
  ferrule: words('Ferrule', 'ferrule|shell|collar'),
  die: words('Die', 'die|dies|die set'),
  dial: words('Dial', 'dial|dial (?:set|used|setting)|machine dial', 'setting|machine setting'),
  uncertainty: words('Uncertainty', 'u|(?:expanded )?uncertainty(?: u)?(?: of the mean)?'),
  perTurn: words('Change per turn', 'per turn|change per turn'),
  step: words('Step', 'step|change per digit|per digit|diameter per digit|digit step'),
  target: words(
    'Target diameter',
    `target|target (?:${DIAMETER}|size|value|crimp|crimp diameter)|crimp ?${DIAMETER}|(?:nominal|specified|required|wanted) ?(?:${DIAMETER}|size|value)|finished ${DIAMETER}|set ?point`,
    'nominal|specified|required|wanted|spec|crimp',
  ),
  tolerance: words(
    'Tolerance',
    '(?:± ?)?(?:tolerance|tol\\.?)(?: ?(?:±|\\+\\/-|\\+-))?|crimp tolerance|±|\\+\\/-|\\+-|plus\\/minus|allowed deviation',
  ),
  toleranceWidth: words(
    'Tolerance, whole width',
    `${TOLERANCE},? ?(?:${WHOLE}(?: (?:width|band|range|tolerance))?|width|band)|${WHOLE} ${TOLERANCE}(?: (?:width|band|range))?|(?:width of )?(?:the )?${TOLERANCE} band`,
  ),
  smallest: words(
    'Smallest diameter',
    `(?:smallest|min\\.?|minimum|lowest|lower) ?(?:crimp )?(?:${DIAMETER}|limit|allowed)|smallest|lowest|lower|low limit|lsl`,
    'min\\.?|minimum',
  ),
  largest: words(
    'Largest diameter',
    `(?:largest|max\\.?|maximum|highest|upper) ?(?:crimp )?(?:${DIAMETER}|limit|allowed)|largest|highest|upper|high limit|usl`,
    'max\\.?|maximum',
  ),
  largestSpread: words(
    'Largest spread',
    '(?:largest|greatest) spread|allowed spread|spread limit|max\\.? spread|maximum spread|(?:largest|greatest|allowed|max\\.?|maximum) ovality|ovality limit',
  ),
  crimpLength: words('Crimp length', 'crimp length'),
  skiveOutside: words('Skive outside', 'skive outside|outside skive'),
  skiveInside: words('Skive inside', 'skive inside|inside skive'),
  insertionDepth: words('Insertion depth', 'insertion depth|insertion|insertion mark|insert depth'),
  angle: words('Angle', 'angle|elbow angle'),
  length: words(
    'Length',
    'length|length each|each length|length per (?:reel|coil|piece)|length left|left|on the reel|on reel|stock length|reel length|remaining|remaining length|length remaining|balance|length on reel|stock|new length|length new|length when new',
  ),
  lengthLeft: words(
    'Length',
    'length left|left length|left|on the reel|on reel|remaining|remaining length|length remaining|rest|rest length|balance|length on reel|length now|now',
  ),
  usedUp: words(
    'Used',
    '(?:length |hose )?used(?: up)?|used length|length used|taken(?: off)?|out|booked out|issued|withdrawn|consumed',
  ),
  place: words('Place', 'place|rack|bay|shelf|location|where|bin|store|rack no\\.?'),
  reel: words('Reel', 'reel|reel no\\.?|reel number|reel id|coil|coil no\\.?|drum|drum no\\.?'),
  lot: words('Lot', 'lot|batch|lot no\\.?|lot number|batch no\\.?|batch number|charge'),
  made: words(
    'Made',
    'made|made on|date made|date of making|date of manufacture|manufactured|mfg\\.?(?: date)?|mfd\\.?|date code|production date|hose made|year made|quarter',
    'date|year|age',
  ),
  combination: words(
    'Combination',
    'combination|hose (?:and|with|\\+|&|\\/) (?:fitting|coupling)|assembly type|set-?up',
    'type|kind|article|product|part|part (?:no\\.?|number)|configuration',
  ),
  fitting: words('Fitting', 'fitting|coupling|end fitting|insert|connector|fitting (?:type|part|name)|coupling type'),
  end: words('End', 'end|side|which end'),
  date: words('Date', 'date|day|made|made on|measured on|crimped on|when|date (?:made|measured|crimped)|date and time|time'),
  crimpedOn: words('Crimped on', 'crimped on|date crimped|day of (?:the )?crimp|crimp date'),
  time: words('Time', 'time|time of day|clock'),
  crimp: words(
    'Line or crimp no.',
    '(?:line|job|crimp|assembly|serial|sample|piece|test)(?: no\\.?| number)?|job line|no\\.?|#|id',
  ),
  readingNumber: words(
    'Number of the reading',
    '(?:reading|measurement) (?:no\\.?|number)|position|pos\\.?|angle|place|flat|point',
  ),
  reading: words(
    'Readings',
    `(?:reading|caliper|calliper|measurement|measured|measured ?(?:${DIAMETER}|size|value)|actual|actual ?(?:${DIAMETER}|size)|measure|gauge|reads?|value|result)s?(?: ?#?\\d{0,2}| [a-h])|(?:flat|point|spot)s? ?#?\\d{1,2}|(?:m|r|x|ø|d|dia\\.?|od|diameter) ?#?\\d?|#? ?\\d|0|45|90|135|\\d{1,3} ?(?:°|deg)`,
  ),
  piece: words('Piece', 'piece|piece no\\.?'),
  operator: words('Operator', 'operator|made by|crimped by|measured by|who|by|initials'),
  lowest: words('Lowest dial', 'lowest|lowest dial'),
  highest: words('Highest dial', 'highest|highest dial'),
  largestMove: words('Largest move', 'largest move'),
  hoseLot: words('Hose lot', 'hose lot|lot of hose|hose batch'),
  hoseMade: words('Hose made', 'hose made|hose date|made of hose'),
  fittingLot: words('Fitting lot', '(?:fitting|coupling) lot|lot of (?:fitting|coupling)|(?:fitting|coupling) batch'),
  customerClass: words('Customer class', 'class|customer class|customer group|price class|price group'),
  customer: words(
    'Customer',
    'customer|customer name|name of customer|client|account|sold to|ship to|bill to|customer no\\.?|customer number',
  ),
  margin: words('Margin (a fraction)', 'margin|target margin|margin on price'),
  task: words('Task', 'task|care|work|what'),
  every: words(
    'Every',
    'every|interval|every … days|every days|days|(?:cal(?:ibration|\\.)?|check) (?:interval|cycle)|cycle|frequency',
  ),
  lastDone: words('Last done', 'last done|last|done|done on'),
  ferruleLot: words('Ferrule lot', '(?:ferrule|shell|collar) (?:lot|batch)|lot of ferrules?'),
  verdict: words('Verdict', 'verdict|crimp verdict|judgement'),
  finishedLength: words('Finished length', 'finished length|finish length|measured length|length measured|actual length'),
  lengthVerdict: words('Length verdict', 'length verdict|length check|finished length verdict'),
  testPressure: words('Test pressure', 'test pressure|proof pressure|test at'),
  testedAt: words('Tested at', 'tested at|pressure reached|tested pressure'),
  testedFor: words('Tested for', 'tested for|held for|hold time|time held'),
  gauge: words(
    'Gauge',
    'gau?ges?|gau?ge (?:no\\.?|id|number)|pressure gau?ge|tool (?:no\\.?|id|number)|instrument (?:no\\.?|id)',
    'tool|instrument|id|asset|asset no\\.?|equipment(?: no\\.?| id)?',
  ),
  caliper: words('Caliper', 'cal+iper(?: (?:no\\.?|id|number|used))?'),
  measuredWith: words('Gauge', '(?:pressure )?gau?ges?(?: (?:no\\.?|id|number|used))?|instrument (?:no\\.?|id)|measured with'),
  flushed: words('Flushed', 'flushed'),
  capped: words('Capped', 'capped'),
  replaces: words('Replaces', 'replaces|replacement (?:for|of)|instead of'),
  useBy: words('Use by', 'use by|use-by|use before'),
  kind: words('Kind', 'kind|kind of gauge|sort'),
  gaugeKind: words('Kind', 'gau?ge type|kind of gau?ge', 'type|description'),
  checked: words(
    'Checked',
    'checked|checked on|last checked|calibrated|calibrated on|last calibrated|calibration date|cal\\.? date|last cal(?:ibration|\\.)?(?: date)?|date (?:of (?:last )?)?(?:calibration|calibrated|checked)',
  ),
  checkDue: words(
    'Check due',
    '(?:next )?(?:cal(?:ibration|\\.)?|check) due(?: date| on)?|next (?:cal(?:ibration|\\.)?|check|due)(?: date)?|(?:calibration )?(?:expires|expiry)(?: date)?|valid until',
    'due|due date',
  ),
  rangeLow: words('Range from', 'range from|range low|lowest reading|scale from'),
  rangeHigh: words('Range to', 'range to|range high|full scale|highest reading|scale to'),
  unit: words('Unit', 'unit|units'),
  resolution: words('Resolution', 'resolution|reads to'),
} as const satisfies Readonly<Record<string, HeadingWords>>;

/** A word of the vocabulary. */
export type HeadingWord = keyof typeof HEADING_WORDS;
