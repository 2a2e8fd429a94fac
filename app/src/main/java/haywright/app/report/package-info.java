/**
 * Papers and pictures: one class a paper, one class a picture. A paper is XHTML, shown in a page and printed from the
 * same string.
 *
 * <p>Start at {@link haywright.app.report.FeedLetter}. In: a ranch and what the engine worked out. Out: the parts of a
 * paper, its XHTML, and through {@link haywright.app.report.Paper} a tagged PDF on Letter or A4.
 *
 * <p>Here kilograms become pounds, bales and sentences; no ration is worked out here.
 */
@NullMarked
package haywright.app.report;

import org.jspecify.annotations.NullMarked;
