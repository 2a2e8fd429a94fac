/** A week as it was: what was fed, counted and scored moves what the next winter book starts from. */
@org.jspecify.annotations.NullMarked
package haywright.season.week;
