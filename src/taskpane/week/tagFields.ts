import { labelSheets } from '../../sheets/tags/labelSheets';

/** Fields of the tags before anybody has touched them. */
export const FRESH_TAGS = {
  maker: '',
  prefix: '',
  labels: labelSheets[0].id as string,
  used: '0',
  machine: '',
  pressureUnit: 'bar',
};
