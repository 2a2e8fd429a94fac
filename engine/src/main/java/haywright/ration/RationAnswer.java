package haywright.ration;

/** A ration, or what stands in its way: "no ration" is an answer, not an accident. */
public sealed interface RationAnswer permits Ration, NoRation {}
