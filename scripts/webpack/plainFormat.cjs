/** In place of @stdlib/string-format, which serves that library's own error texts only and is larger than the functions in use. */
module.exports = (text, ...values) => [text, ...values].join(' ');
