/** A winter book as numbers, names and days alone: what pages and papers show, and what is kept when the program ends. */
@org.jspecify.annotations.NullMarked
package haywright.season.kept;
