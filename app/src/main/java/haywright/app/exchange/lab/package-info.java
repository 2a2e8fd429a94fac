/** What a laboratory's file is understood to say, whatever its format: names, samples, cells. */
@NullMarked
package haywright.app.exchange.lab;

import org.jspecify.annotations.NullMarked;
