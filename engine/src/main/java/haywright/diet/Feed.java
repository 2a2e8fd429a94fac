package haywright.diet;

import haywright.forage.Composition;
import haywright.forage.FeedClass;

/**
 * A feed as a diet sees it.
 *
 * @param id the lot's or bought feed's id, unique in a diet
 * @param nitrateDanger a class or a year in which nitrate is a danger until it is tested
 */
public record Feed(String id, String name, FeedClass feedClass, Composition composition, boolean nitrateDanger) {}
