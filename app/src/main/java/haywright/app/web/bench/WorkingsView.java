package haywright.app.web.bench;

import haywright.app.words.CheckedWords;
import haywright.app.words.Likely;
import haywright.app.words.Show;
import haywright.app.words.ration.LimitWords;
import haywright.app.words.ration.RuleWords;
import haywright.cattle.herd.Group;
import haywright.cattle.need.Need;
import haywright.diet.CheckedNeed;
import haywright.feeding.Offers;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ration.HandMix;
import haywright.ration.LimitAnswer;
import haywright.ration.NotUsed;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import haywright.ration.UsualMineral;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Everything behind a group's ration, a sentence each.
 *
 * @param sure how surely each need is met, and by whose word they are fed so
 * @param surer the least sure limit and what its doubt is made of
 * @param beside the ration beside what cattle usually eat and what the trade says
 * @param faults all that is wrong with what they are fed now
 * @param worked how the cost comes about; null where there is no ration
 */
public record WorkingsView(
        Group group,
        String need,
        String sure,
        List<String> surer,
        List<String> beside,
        List<String> faults,
        List<Feed> feeds,
        List<Limit> limits,
        List<Checked> checked,
        List<String> unused,
        List<String> ranges,
        @Nullable Worked worked) {
    /** @param likely how far its figures may lie */
    public record Feed(String says, String all, String likely) {}

    /** @param price what it costs where it decides; empty where there is room */
    public record Limit(String name, String says, boolean met, String price, String source) {}

    /** A need that decides nothing: what is needed, what is known of what the feeds bring, and what to do. */
    public record Checked(String name, String needed, String supplied, String says, String source) {}

    static WorkingsView of(Offers offers) {
        var yard = offers.yard();
        var group = offers.group();
        var need = offers.rations().question(group).need();
        var ration = offers.answer() instanceof Ration found ? Optional.of(found) : Optional.<Ration>empty();
        var mix = offers.sure().or(offers::now).map(offer -> offer.mix());
        return new WorkingsView(
                group,
                needed(need, yard.day()),
                ration.map(r -> sure(offers, r)).orElse(""),
                ration.map(r -> Surer.of(yard, r)).orElse(List.of()),
                ration.map(r -> RuleWords.beside(need, r)).orElse(List.of()),
                offers.now().map(now -> BenchView.shortfalls(offers, now)).orElse(List.of()).stream()
                        .map(Show::capital)
                        .toList(),
                mix.map(m -> feeds(yard, group, m)).orElse(List.of()),
                mix.map(m -> limits(ration, m)).orElse(List.of()),
                mix.map(m -> checked(m.checked())).orElse(List.of()),
                ration.map(r -> unused(offers, r)).orElse(List.of()),
                ration.map(WorkingsView::ranges).orElse(List.of()),
                ration.orElse(null));
    }

    private static String needed(Need need, LocalDate day) {
        return "What one head needs on %s: %s Mcal NEm".formatted(Show.date(day), Show.number(need.nem(), 2));
    }

    private static String sure(Offers offers, Ration ration) {
        var asked = offers.rations().question(offers.group()).sureness();
        var kept = ration.sureness();
        var says = "Energy is met at least %s times in 100, whatever the feeds turn out to be, protein and minerals %s."
                .formatted(Show.number(kept.energyPercent(), 0), Show.number(kept.othersPercent(), 0));
        return kept.energyPercent() >= asked.energyPercent() && kept.othersPercent() >= asked.othersPercent()
                ? says
                : says
                        + " You asked for %s and %s: these feeds cannot be made so sure at a price worth it."
                                .formatted(
                                        Show.number(asked.energyPercent(), 0), Show.number(asked.othersPercent(), 0));
    }

    private static List<Feed> feeds(Yard yard, Group group, HandMix mix) {
        return mix.portions().stream()
                .map(p -> new Feed(
                        MixWords.portion(yard, group, p) + ", " + Show.dollars(p.cost()) + " per head per day",
                        MixWords.all(yard, group, p),
                        likely(yard, p.feed())))
                .toList();
    }

    static String likely(Yard yard, PricedFeed feed) {
        return UsualMineral.is(feed)
                ? "no mineral of your own is entered, so a usual one is taken: 18 % calcium, 6 % phosphorus, "
                        + Show.price(Quantity.of(1100, Unit.DOLLAR_PER_TON))
                : Likely.of(yard.composition(feed.feed().id())).orElse("no figures say how far it may differ");
    }

    /** By what is put out, with the price that the exact ration gives each limit. */
    private static List<Limit> limits(Optional<Ration> ration, HandMix mix) {
        return mix.limits().stream()
                .map(limit -> new LimitAnswer(limit.row(), limit.supplied(), price(ration, limit)))
                .filter(LimitWords::isSaid)
                .map(WorkingsView::limit)
                .toList();
    }

    private static double price(Optional<Ration> ration, LimitAnswer limit) {
        return ration.stream()
                .flatMap(r -> r.limits().stream())
                .filter(exact -> exact.row().id().equals(limit.row().id()))
                .mapToDouble(LimitAnswer::price)
                .findFirst()
                .orElse(0);
    }

    private static Limit limit(LimitAnswer limit) {
        var row = limit.row();
        return new Limit(
                LimitWords.start(row),
                "%s, %s".formatted(LimitWords.amount(row, limit.supplied()), LimitWords.needed(row)),
                limit.isMet(),
                LimitWords.isTight(limit) ? LimitWords.tight(limit) : "",
                cited(row.source()));
    }

    static String cited(Source source) {
        return "%s (%s)".formatted(source.cite(), source.known().words());
    }

    private static List<Checked> checked(List<CheckedNeed> needs) {
        return needs.stream()
                .map(need -> new Checked(
                        Show.capital(need.name()),
                        CheckedWords.share(need.needed(), need.unit()),
                        CheckedWords.supplied(need),
                        CheckedWords.says(need),
                        cited(need.source())))
                .toList();
    }

    private static List<String> unused(Offers offers, Ration ration) {
        return ration.notUsed().stream().map(not -> unused(offers, not)).toList();
    }

    /** A feed that is bought by what it is worth to the whole ranch until turnout, where that is known. */
    private static String unused(Offers offers, NotUsed not) {
        var feed = not.feed();
        var all = feed.own()
                ? OptionalDouble.empty()
                : offers.rations().worth(feed.feed().id());
        double worth = all.orElse(not.worthBuyingBelow());
        var kept = feed.own()
                ? offers.rations()
                        .kept(feed.feed().id())
                        .map(later -> "kept by the winter plan for %s from %s; now "
                                .formatted(String.join(" and ", later.groups()), Show.day(later.from())))
                        .orElse("")
                : "";
        return "%s, %s: %s%s."
                .formatted(
                        named(feed),
                        BenchView.aTon(feed.pricePerKgAsFed()),
                        kept,
                        worth > 0
                                ? "worth %s below %s%s"
                                        .formatted(
                                                feed.own() ? "feeding" : "buying",
                                                BenchView.ofATon(worth),
                                                all.isPresent() ? " to the whole ranch by turnout" : "")
                                : "not worth feeding at any price");
    }

    private static List<String> ranges(Ration ration) {
        return ration.portions().stream()
                .filter(p -> !Double.isNaN(p.priceRange().low()))
                .map(p -> "%s, %s: from %s to %s."
                        .formatted(
                                named(p.feed()),
                                BenchView.aTon(p.feed().pricePerKgAsFed()),
                                p.priceRange().low() > 0
                                        ? BenchView.ofATon(p.priceRange().low())
                                        : "any lower price",
                                Double.isFinite(p.priceRange().high())
                                        ? BenchView.ofATon(p.priceRange().high())
                                        : "any higher price"))
                .toList();
    }

    private static String named(PricedFeed feed) {
        return feed.feed().name() + ", " + Show.dryMatter(feed.dryMatterPercent());
    }
}
