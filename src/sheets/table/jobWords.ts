const END_A = '(?:a|1|one|left|first|near)';
const END_B = '(?:b|2|two|right|second|far)';
const PART = '(?:fitting|coupling|end|end fitting|connection|insert|connector|termination)';

/**
 * What people call the columns of a job sheet or a rack, in lower case and without the unit: every view knows the same words.
 * A column named only `fitting` is left to those views that can take it for end A.
 */
export const JOB_WORDS = {
  hose: /^(?:hose|tube|material|hose (?:type|part|line|item|grade|style|spec|name)|hose no\.?)$/,
  fittingA: new RegExp(`^(?:${PART}s? ?${END_A}|${END_A} ${PART})$`),
  fittingB: new RegExp(`^(?:${PART} ?${END_B}|${END_B} ${PART}|other end)$`),
  overall:
    /^(?:overall|overall length|oal|o\.a\.l\.?|length overall|length over all|assembly length|total length|finished length|made[- ]up length)$/,
  cutLength: /^(?:cut|cut length|cut to|hose cut|length to cut|cutting length)$/,
  quantity: /^(?:quantity|qty\.?|pcs\.?|pieces|number|how many|count|no\. off|off|amount)$/,
  line: /^(?:line|line no\.?|job line|job|item|pos\.?|position|no\.?|#)$/,
  shortest: /^(?:shortest|min\.?|minimum|shortest length)$/,
  longest: /^(?:longest|max\.?|maximum|longest length)$/,
  bore: /^(?:bore|inside diameter|bore diameter)$/,
} as const;

/** One pattern that takes what either takes. */
export const either = (one: RegExp, other: RegExp): RegExp => new RegExp(`${one.source}|${other.source}`);
