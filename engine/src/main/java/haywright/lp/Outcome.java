package haywright.lp;

/** What a linear program answers: a best plan, limits that no plan can keep together, or no best plan at all. */
public sealed interface Outcome permits Optimum, Infeasible, Unbounded {}
