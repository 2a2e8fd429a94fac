/** What is given of a winter: the feeds, the groups week by week, what every winter known would have asked, and what things cost. */
@NullMarked
package haywright.season.given;

import org.jspecify.annotations.NullMarked;
