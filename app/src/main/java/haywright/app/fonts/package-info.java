/** The typeface that papers are set in and PDF files are read with: no fonts of the machine are looked for. */
@NullMarked
package haywright.app.fonts;

import org.jspecify.annotations.NullMarked;
