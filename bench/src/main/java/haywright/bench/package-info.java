/**
 * Measurements and comparisons with a general-purpose solver. Never on the run path: nothing in the program knows this
 * module. Every figure is a ratio within one run, because seconds differ from machine to machine.
 */
@NullMarked
package haywright.bench;

import org.jspecify.annotations.NullMarked;
