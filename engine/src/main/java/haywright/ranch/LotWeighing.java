package haywright.ranch;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.sampling.stock.Weighing;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was put over a scale of a lot: some of its bales, or all of it load by load.
 *
 * @param bales each bale, as fed; empty when the whole lot was weighed
 * @param of bales in the lot on that day; null when the whole lot was weighed
 * @param whole what the loads add up to; null when bales were weighed
 */
public record LotWeighing(
        LocalDate on,
        List<Quantity> bales,
        @Nullable Integer of,
        @Nullable Quantity whole) {
    /** Nine times in ten. */
    private static final double CONFIDENCE = 90;

    public LotWeighing {
        bales = List.copyOf(bales);
        bales.forEach(bale -> Refused.unlessOfKind(Kind.MASS, "bales", bale));
        if (whole == null) {
            weighing(bales, of);
        } else {
            Refused.unlessOfKind(Kind.MASS, "whole", whole);
            if (!(whole.base() > 0)) {
                throw new Refused(
                        "whole", whole.asTyped(), "a lot weighs more than 0", "Enter what the load tickets add up to.");
            }
            if (!bales.isEmpty()) {
                throw new Refused(
                        "bales",
                        bales.size() + " bales",
                        "enter some bales or the whole lot, not both",
                        "Enter them one after the other.");
            }
        }
    }

    public static LotWeighing ofBales(LocalDate on, List<Quantity> bales, int of) {
        return new LotWeighing(on, bales, of, null);
    }

    public static LotWeighing ofWhole(LocalDate on, Quantity whole) {
        return new LotWeighing(on, List.of(), null, whole);
    }

    /** What the bales say of all of them on that day. */
    public Weighing weighing() {
        return weighing(bales, of);
    }

    private static Weighing weighing(List<Quantity> bales, @Nullable Integer of) {
        return new Weighing(bales.stream().map(Quantity::base).toList(), of == null ? bales.size() : of, CONFIDENCE);
    }
}
