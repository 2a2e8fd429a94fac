package haywright.lp;

import java.util.Map;

/**
 * The objective has no best value: it improves for ever along a direction that keeps every limit.
 *
 * @param column the column that moves fastest in that direction: the one that most likely lacks a bound
 * @param direction how much each moving column changes for a step along it, the fastest by 1 or −1
 */
public record Unbounded(String column, Map<String, Double> direction) implements Outcome {}
