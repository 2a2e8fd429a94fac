package haywright.app.web.bench;

import haywright.app.words.Feeding;
import haywright.app.words.Show;
import haywright.app.words.ration.LimitWords;
import haywright.app.words.ration.SupplyWords;
import haywright.cattle.herd.Group;
import haywright.feeding.Offer;
import haywright.feeding.Offers;
import haywright.outlook.Yard;
import haywright.ration.HandMix;
import haywright.ration.Portion;
import haywright.ration.WholeBales;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** A mix in words. */
final class MixWords {
    /** Percent below which a way of feeding is no way to compare with. */
    private static final double NEVER = 5;

    /** Share of dry matter besides hay above which a bale is not left to last some days (judgment). */
    private static final double RICH = 0.2;

    private MixWords() {}

    static Feeding feeding(Yard yard, Group group, Portion portion) {
        return new Feeding(portion.kgPutOut(), group.head(), yard.baleKg(portion));
    }

    /** {@code 22½ lb Pivot hay, first cutting}. */
    static String portion(Yard yard, Group group, Portion portion) {
        return feeding(yard, group, portion).aHead() + " "
                + portion.feed().feed().name();
    }

    /** One a feed. */
    static List<String> feeds(Yard yard, Group group, HandMix mix) {
        return mix.portions().stream().map(p -> portion(yard, group, p)).toList();
    }

    /** For the whole group: {@code 5,400 lb a day, 4.3 bales a day of 1,250 lb}. */
    static String all(Yard yard, Group group, Portion portion) {
        var put = feeding(yard, group, portion);
        return put.aDay()
                + put.bales(false)
                        .map(bales -> ", %s of %s".formatted(bales, put.bale().orElseThrow()))
                        .orElse("");
    }

    /** {@code First cutting lasts until Feb 12, straw until Feb 20.}; that all lasts where all does. */
    static String lasts(Offer offer, Optional<LocalDate> grass) {
        if (offer.gone().isEmpty()) {
            return grass.map(day -> "Its feeds last to turnout, " + Show.day(day) + ".")
                    .orElse("Enter a turnout date to see whether its feeds last.");
        }
        return offer.gone().entrySet().stream()
                .sorted(Map.Entry.comparingByValue())
                .map(gone -> "%s lasts until %s".formatted(gone.getKey().feed().name(), Show.day(gone.getValue())))
                .collect(Collectors.joining(". ", "", "."));
    }

    /** The ration in whole bales, or that none come near it; empty where nothing of it is baled. */
    static String bales(Offers offers) {
        return offers.wholeBales()
                .map(whole -> bales(offers.yard(), offers.group(), whole))
                .orElseGet(() -> offers.sure().stream()
                                .flatMap(sure -> sure.mix().portions().stream())
                                .anyMatch(p -> offers.yard().baleKg(p).isPresent())
                        ? "No number of whole bales comes near this ration: weigh it, or peel bales off."
                        : "");
    }

    /** {@code In whole bales: 7 of Pivot hay and 17 of Meadow hay every 4 days. Beside them per head per day: 2 lb Barley.} */
    private static String bales(Yard yard, Group group, WholeBales whole) {
        var each = whole.bales().stream()
                .map(bales -> Show.number(bales.count(), 0) + " of "
                        + bales.feed().feed().name())
                .collect(Collectors.joining(" and "));
        if (whole.days() > 1 && isRich(whole)) {
            return "Roll a part of a bale out every day, no whole bales every %s days: with this much grain and cake, hay must not run out before the next."
                    .formatted(Show.number(whole.days(), 0));
        }
        var baled = whole.bales().stream().map(WholeBales.Bales::feed).toList();
        var beside = whole.mix().portions().stream()
                .filter(p -> !baled.contains(p.feed()) && !p.feed().feed().isLooseMineral())
                .map(p -> portion(yard, group, p))
                .collect(Collectors.joining(", "));
        var missed = LimitWords.shortfalls(whole.mix(), List.of()).stream()
                .findFirst()
                .map(words -> " " + Show.capital(words) + ".")
                .orElse("");
        return "In whole bales: %s every %s.%s%s"
                .formatted(
                        each,
                        whole.days() == 1 ? "day" : Show.number(whole.days(), 0) + " days",
                        beside.isEmpty() ? "" : " Beside them per head per day: " + beside + ".",
                        missed);
    }

    /** Whether so much besides hay is fed that they eat a bale before its day and then grain on an empty stomach. */
    private static boolean isRich(WholeBales whole) {
        double rich = whole.mix().portions().stream()
                .filter(p -> !p.feed().feed().feedClass().isForage()
                        && !p.feed().feed().isLooseMineral())
                .mapToDouble(Portion::kg)
                .sum();
        double all = whole.mix().portions().stream().mapToDouble(Portion::kg).sum();
        return rich > RICH * all;
    }

    /** {@code 3 ¢ less: × 240 head × 34 days to Jan 4, $245.} With a pencil, for as long as both can be fed. */
    static String apart(Offer one, Offer other, Offers offers) {
        long cents = Math.round(100 * (one.cents() - other.cents()));
        if (cents == 0) {
            return "Costs the same." + later(one, other);
        }
        var until = offers.bothLast(one, other);
        long days = offers.yard().day().until(until, ChronoUnit.DAYS);
        int head = offers.group().head();
        var each = Show.cents(Math.abs(cents) / 100.0);
        return "%s %s%s.%s"
                .formatted(
                        each,
                        cents < 0 ? "less" : "more",
                        days < 2
                                ? ""
                                : ": %s × %s head × %d days, while both last (to %s), is $%s"
                                        .formatted(
                                                each,
                                                Show.number(head, 0),
                                                days,
                                                Show.day(until),
                                                Show.number(Math.abs(cents) * head * days / 100.0, 0)),
                        later(one, other));
    }

    /**
     * Why the one that costs more may be better: {@code  It saves feed for later, worth 12 ¢ more then than its price now: 8 ¢
     * ahead.} Empty where the two differ by no more than their price.
     */
    static String later(Offer one, Offer other) {
        if (other.holdsPercent() < NEVER) {
            return "";
        }
        double ahead = Math.rint(100 * (other.counted() - one.counted())) / 100;
        double leaves = Math.rint(100 * (ahead - (other.cents() - one.cents()))) / 100;
        if (leaves == 0) {
            return "";
        }
        return " It %s feed worth %s more than its price later this winter: %s%s."
                .formatted(
                        leaves > 0 ? "saves" : "uses up",
                        Show.cents(Math.abs(leaves)),
                        ahead == 0 ? "even" : Show.cents(Math.abs(ahead)),
                        ahead == 0 ? "" : ahead > 0 ? " ahead in all" : " behind in all");
    }

    /** {@code enough 7 times in 10}; of what can kill or may not be fed that it is not to be fed. */
    static String enough(Offer offer) {
        return offer.mix().harms().isEmpty() && offer.mix().notAllowed().isEmpty()
                ? SupplyWords.enough(offer.holdsPercent())
                : "don’t feed it";
    }

    /** Where one is surer than the other by what can be told: {@code  It is enough 7 times in 10, not 9.} */
    static String surer(Offer one, Offer other) {
        long is = Math.round(one.holdsPercent() / 10);
        long was = Math.round(other.holdsPercent() / 10);
        return is == was || other.holdsPercent() < NEVER
                ? ""
                : " It is enough %d times in 10, not %d.".formatted(is, was);
    }

    /** To two figures: {@code $7,800}. */
    static String about(double dollars) {
        double power = Math.pow(10, Math.max(0, Math.floor(Math.log10(Math.max(1, dollars))) - 1));
        return "$" + Show.number(Math.rint(dollars / power) * power, 0);
    }
}
