package haywright.outlook;

import haywright.ranch.Lot;
import haywright.ranch.LotWeighing;
import haywright.sampling.stock.MassRange;
import haywright.sampling.stock.Stock;
import haywright.workings.Worked;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What a lot weighs, by every way that is known of it, each with its range; none takes another's place.
 *
 * @param ways as it was typed in first, then what was weighed, oldest first; empty where nothing is known
 * @param used the one that counts everywhere; null where nothing is known
 * @param why it is that one, and whether the others agree
 */
public record LotTons(List<Way> ways, @Nullable Way used, String why) {
    /**
     * One way of knowing.
     *
     * @param on the day of a weighing; null for what was typed in
     * @param workings of the kilograms
     */
    public record Way(String how, @Nullable LocalDate on, double kg, MassRange range, Worked workings) {
        /** Half the range, as a share of the mass. */
        double doubt() {
            return (range.highKg() - range.lowKg()) / 2 / kg;
        }
    }

    public LotTons {
        ways = List.copyOf(ways);
    }

    public static LotTons of(Lot lot) {
        var stock = lot.stock();
        var ways = new ArrayList<Way>();
        var asFed = stock.asFedKg();
        if (asFed.isPresent()) {
            ways.add(new Way(
                    howTyped(stock), null, asFed.getAsDouble(), stock.range().orElseThrow(), stock));
        }
        // By their days, however late one was typed in; of two on one day the one that was typed last.
        for (var weighing : lot.weighings().stream()
                .sorted(Comparator.comparing(LotWeighing::on))
                .toList()) {
            weighed(stock, weighing).ifPresent(ways::add);
        }
        if (ways.isEmpty()) {
            return new LotTons(ways, null, "Nothing is known of its weight yet.");
        }
        var last = ways.get(ways.size() - 1);
        var typed = ways.get(0);
        if (last.on() == null) {
            return new LotTons(ways, last, alone(stock));
        }
        boolean weighedIsBetter = typed.on() != null || last.doubt() <= typed.doubt();
        var used = weighedIsBetter ? last : typed;
        var why = weighedIsBetter
                ? "The newest weighing is used: it is narrower than what was typed in."
                : "What was typed in is still used: so few were weighed, or they differ so much, that the weighing is wider."
                        + " Weigh more of them.";
        return new LotTons(ways, used, typed.on() != null ? "It was only weighed." : why + apart(typed, last));
    }

    /** Kilograms as fed, by the better of what was typed in and what was weighed. */
    public OptionalDouble kg() {
        return used == null ? OptionalDouble.empty() : OptionalDouble.of(used.kg());
    }

    /** Kilograms of one bale of a lot, by the same; empty for what does not lie in bales. */
    public static OptionalDouble baleKg(Lot lot) {
        int bales = lot.stock().bales();
        return bales == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(of(lot).kg().orElseThrow() / bales);
    }

    private static String howTyped(Stock stock) {
        if (stock.bales() > 0) {
            return "Counted, at the weight of a bale that was typed in";
        }
        return stock instanceof Stock.Weighed ? "Off the scale or the tickets" : "Measured, at its density";
    }

    private static String alone(Stock stock) {
        if (stock instanceof Stock.Weighed) {
            return "It is what the scale or the tickets say.";
        }
        return stock.bales() > 0
                ? "Nothing was weighed yet. Five to ten bales over a scale narrow it."
                : "Nothing was weighed yet. Tickets of all its loads would narrow it.";
    }

    /** A weighing of bales says nothing once the lot does not lie in bales. */
    private static Optional<Way> weighed(Stock stock, LotWeighing weighing) {
        var whole = weighing.whole();
        if (whole != null) {
            var all = new Stock.Weighed(whole);
            return Optional.of(new Way(
                    "All of it weighed, load by load",
                    weighing.on(),
                    whole.base(),
                    all.range().orElseThrow(),
                    all));
        }
        if (stock.bales() == 0) {
            return Optional.empty();
        }
        var then = weighing.weighing();
        double share = (double) stock.bales() / then.bales();
        var range = then.range();
        return Optional.of(new Way(
                "%d of %d bales weighed".formatted(then.kilograms().size(), then.bales())
                        + (stock.bales() == then.bales() ? "" : ", of which %d are there now".formatted(stock.bales())),
                weighing.on(),
                share * then.totalKg(),
                new MassRange(share * range.lowKg(), share * range.highKg(), range.words(), range.source()),
                then));
    }

    private static String apart(Way typed, Way weighed) {
        boolean meet = typed.range().lowKg() <= weighed.range().highKg()
                && weighed.range().lowKg() <= typed.range().highKg();
        return meet ? "" : " The two do not meet: count once more, or weigh others from all over the lot.";
    }
}
