/** What comes from and goes to other programs: one package a format. */
@NullMarked
package haywright.app.exchange;

import org.jspecify.annotations.NullMarked;
