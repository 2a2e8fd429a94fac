package haywright.app.web.bench;

import haywright.app.words.CheckedWords;
import haywright.app.words.Feeding;
import haywright.app.words.Likely;
import haywright.app.words.LimitWords;
import haywright.app.words.RuleWords;
import haywright.app.words.Show;
import haywright.cattle.herd.Group;
import haywright.cattle.need.Need;
import haywright.diet.CheckedNeed;
import haywright.diet.LeftOut;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ration.HandMix;
import haywright.ration.LimitAnswer;
import haywright.ration.NoRation;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import haywright.ration.UsualMineral;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * One group's ration as a page shows it.
 *
 * @param now what is fed now, judged; null when nobody has said
 * @param mix the cheapest ration; null when there is none
 * @param way what stands in the way; null when there is a ration
 */
public record BenchView(
        Group group,
        Need need,
        @Nullable Judged now,
        @Nullable Mix mix,
        @Nullable InTheWay way,
        List<FeedRow> feeds,
        List<LeftOut> leftOut,
        List<String> beside) {
    /** @param shortOfHay how much hay is missing until grass, in words; empty where it lasts or cannot be told */
    public record Groups(List<GroupRow> rows, Optional<String> shortOfHay) {}

    /** @param says cost, or what is wrong, in a few words; done whether there is a ration */
    public record GroupRow(Group group, boolean done, String says, String now) {}

    public record Cannot(Group group, List<Problem> problems) {}

    /**
     * As fed a head and day; zero where none.
     *
     * @param group what of the mix goes out for the whole group a day; empty where none
     * @param likely how far its figures may lie, in words
     * @param lasts until when it lasts if all groups go on so; empty where it reaches past grass or has no end
     */
    public record FeedRow(
            String name, String now, String mix, String group, String difference, String likely, String lasts) {}

    public record Judged(String cost, List<String> shortfalls, List<LimitRow> limits, List<Checked> checked) {}

    /** A need that decides nothing: what is needed, what is known of what the feeds bring, and what to do. */
    public record Checked(String name, String needed, String supplied, String says, String source) {}

    /**
     * @param misses what the amounts as written are short of; empty for most
     * @param saves against what is fed now, in words; empty when there is nothing to compare with
     * @param holds in how many of the ways that its feeds may be made it meets everything, in words
     * @param sure how surely each need is met, and by whose word they are fed so; in words
     * @param surer what that costs, and what would make it surer
     * @param program whether the linear program can be had
     */
    public record Mix(
            String cost,
            String holds,
            String sure,
            SureView surer,
            List<String> misses,
            String saves,
            List<Tight> tight,
            String spare,
            List<LimitRow> limits,
            List<Checked> checked,
            List<Unused> unused,
            List<Ranges> ranges,
            Worked worked) {}

    public record Tight(String name, String says) {}

    public record LimitRow(String name, String needed, String supplied, String price, boolean met, String source) {}

    public record Unused(String name, String price, String below) {}

    /** Prices a ton as fed between which the mix stays. */
    public record Ranges(String name, String price, String low, String high) {}

    public record InTheWay(List<String> reasons, List<String> lifts) {}

    static GroupRow row(Yard yard, Group group) {
        try {
            var now = yard.fedNow(group);
            var fed = now.map(mix -> Show.dollars(mix.cost())
                            + (mix.meetsEverything()
                                    ? ""
                                    : ", " + shortfalls(mix).get(0)))
                    .orElse("not said");
            if (yard.feeds().isEmpty()) {
                return new GroupRow(
                        group,
                        false,
                        yard.unpriced().isEmpty() ? "no feed on the ranch yet" : "no lot has a price yet",
                        fed);
            }
            return yard.ration(group) instanceof Ration ration
                    ? new GroupRow(
                            group,
                            true,
                            Show.dollars(yard.weighable(group, ration).cost()) + " a head a day",
                            fed)
                    : new GroupRow(group, false, "something stands in the way", fed);
        } catch (Refused refused) {
            return new GroupRow(group, false, refused.problems().get(0).sentence(), "");
        }
    }

    static BenchView of(Yard yard, Group group) {
        var answer = yard.ration(group);
        var now = yard.fedNow(group);
        var need = yard.need(group);
        Optional<HandMix> put =
                answer instanceof Ration ration ? Optional.of(yard.weighable(group, ration)) : Optional.empty();
        var mix = answer instanceof Ration ration ? mix(yard, group, ration, put.orElseThrow(), now) : null;
        var way = answer instanceof NoRation no ? inTheWay(no, need) : null;
        var portions = put.map(HandMix::portions).orElse(List.of());
        return new BenchView(
                group,
                need,
                now.map(BenchView::judged).orElse(null),
                mix,
                way,
                feeds(yard, group, now, portions),
                Stream.concat(yard.question(group).diet().leftOut().stream(), yard.unpriced().stream())
                        .toList(),
                answer instanceof Ration ration ? RuleWords.beside(need, ration) : List.of());
    }

    /** {@code What one head needs on Dec 1, 2026: 13.92 Mcal NEm}. */
    public static String needed(Need need, LocalDate day) {
        return "What one head needs on %s: %s Mcal NEm".formatted(Show.date(day), Show.number(need.nem(), 2));
    }

    static Judged judged(HandMix mix) {
        return new Judged(
                Show.dollars(mix.cost()),
                shortfalls(mix),
                mix.limits().stream()
                        .filter(LimitWords::isSaid)
                        .map(BenchView::limit)
                        .toList(),
                checked(mix.checked()));
    }

    private static List<Checked> checked(List<CheckedNeed> needs) {
        return needs.stream()
                .map(need -> new Checked(
                        need.name().substring(0, 1).toUpperCase(Locale.ROOT)
                                + need.name().substring(1),
                        CheckedWords.share(need.needed(), need.unit()),
                        CheckedWords.supplied(need),
                        CheckedWords.says(need),
                        cited(need.source())))
                .toList();
    }

    private static String cited(Source source) {
        return "%s (%s)".formatted(source.cite(), source.known().words());
    }

    private static List<String> shortfalls(HandMix mix) {
        var words = new ArrayList<String>();
        mix.notAllowed().forEach(out -> words.add(out.why()));
        mix.limits().stream().filter(l -> !l.isMet()).map(LimitWords::shortfall).forEach(words::add);
        return words;
    }

    private static Mix mix(Yard yard, Group group, Ration ration, HandMix put, Optional<HandMix> now) {
        var tight = ration.limits().stream()
                .filter(LimitWords::isTight)
                .map(l -> new Tight(LimitWords.start(l.row()), LimitWords.tight(l)))
                .toList();
        var spare = String.join(
                ", ",
                ration.limits().stream()
                        .filter(l -> !l.isTight())
                        .map(l -> l.row().name())
                        .distinct()
                        .toList());
        return new Mix(
                Show.dollars(put.cost()),
                Show.chances(ration.chance().percent()),
                sure(yard, group, ration),
                SureView.of(yard, group, ration),
                shortfalls(put),
                now.map(n -> Show.dollars(n.cost())).orElse(""),
                tight,
                spare,
                ration.limits().stream()
                        .map(limit -> supplied(limit, put))
                        .filter(LimitWords::isSaid)
                        .map(BenchView::limit)
                        .toList(),
                checked(put.checked()),
                ration.notUsed().stream()
                        .map(n -> new Unused(
                                named(n.feed()),
                                aTon(n.feed().pricePerKgAsFed()),
                                n.worthBuyingBelow() > 0 ? aTon(n.worthBuyingBelow()) : "at no price"))
                        .toList(),
                ration.portions().stream()
                        .filter(p -> !Double.isNaN(p.priceRange().low()))
                        .map(p -> new Ranges(
                                named(p.feed()),
                                aTon(p.feed().pricePerKgAsFed()),
                                p.priceRange().low() > 0 ? aTon(p.priceRange().low()) : "any lower",
                                Double.isFinite(p.priceRange().high())
                                        ? aTon(p.priceRange().high())
                                        : "any higher"))
                        .toList(),
                ration);
    }

    private static String sure(Yard yard, Group group, Ration ration) {
        var asked = yard.question(group).sureness();
        var kept = ration.sureness();
        var wishes = yard.ranch().wishes().get(group.id());
        var way = wishes == null ? null : wishes.way();
        var says = "Energy is met in at least %s of 100 ways that these feeds may be made, protein and minerals in %s."
                .formatted(Show.number(kept.energyPercent(), 0), Show.number(kept.othersPercent(), 0));
        if (!kept.equals(asked)) {
            says += " You asked for %s and %s: the feeds here cannot be made so sure at a price worth it."
                    .formatted(Show.number(asked.energyPercent(), 0), Show.number(asked.othersPercent(), 0));
        }
        return says
                + (way == null
                        ? " Nobody has said how they are fed: put out daily and eaten up is assumed."
                        : " Fed: %s."
                                .formatted(WishForm.words(way)
                                        .substring(0, 1)
                                        .toLowerCase(Locale.ROOT)
                                        .concat(WishForm.words(way).substring(1))));
    }

    /** What the amounts as written supply, with the price that the exact ration gives the limit. */
    private static LimitAnswer supplied(LimitAnswer exact, HandMix put) {
        return put.limits().stream()
                .filter(limit -> limit.row().id().equals(exact.row().id()))
                .findFirst()
                .map(limit -> new LimitAnswer(exact.row(), limit.supplied(), exact.price()))
                .orElse(exact);
    }

    private static String named(PricedFeed feed) {
        return feed.feed().name() + ", " + Show.dryMatter(feed.dryMatterPercent());
    }

    private static String aTon(double dollarsPerKg) {
        return Show.dollars(Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_TON, dollarsPerKg));
    }

    private static LimitRow limit(LimitAnswer limit) {
        var row = limit.row();
        return new LimitRow(
                LimitWords.start(row),
                LimitWords.needed(row),
                LimitWords.amount(row, limit.supplied()),
                LimitWords.isTight(limit) ? LimitWords.tight(limit) : "",
                limit.isMet(),
                cited(row.source()));
    }

    private static InTheWay inTheWay(NoRation no, Need need) {
        var reasons = no.conflicts().stream()
                .map(c -> LimitWords.inTheWay(c.row(), no))
                .toList();
        if (reasons.isEmpty()) {
            reasons = List.of("No feed on the ranch may be fed to this group.");
        }
        return new InTheWay(reasons, LimitWords.lifts(no, need));
    }

    private static List<FeedRow> feeds(Yard yard, Group group, Optional<HandMix> now, List<Portion> mix) {
        Map<String, Portion> before = new LinkedHashMap<>();
        Map<String, Portion> after = new LinkedHashMap<>();
        now.ifPresent(n -> n.portions().forEach(p -> before.put(p.feed().feed().id(), p)));
        mix.forEach(p -> after.put(p.feed().feed().id(), p));
        var all = new LinkedHashMap<>(before);
        after.forEach(all::putIfAbsent);
        return all.entrySet().stream()
                .map(e -> {
                    var was = before.get(e.getKey());
                    var is = after.get(e.getKey());
                    double more = (is == null ? 0 : is.cost()) - (was == null ? 0 : was.cost());
                    return new FeedRow(
                            e.getValue().feed().feed().name(),
                            aHead(yard, group, was),
                            aHead(yard, group, is),
                            is == null ? "" : forTheGroup(put(yard, group, is)),
                            Show.centsMore(more),
                            likely(yard, e.getValue().feed()),
                            is == null
                                    ? ""
                                    : yard.lastsUntil(is.feed()).map(Show::date).orElse(""));
                })
                .toList();
    }

    private static String likely(Yard yard, PricedFeed feed) {
        return UsualMineral.is(feed)
                ? "no mineral of your own is entered, so a usual one stands in: 18 % calcium, 6 % phosphorus, $1,100 a ton"
                : Likely.of(yard.composition(feed.feed().id())).orElse("nobody’s figures say how far it may lie");
    }

    private static Feeding put(Yard yard, Group group, Portion portion) {
        return new Feeding(portion.kgPutOut(), group.head(), yard.baleKg(portion));
    }

    private static String aHead(Yard yard, Group group, @Nullable Portion portion) {
        return portion == null ? "0" : put(yard, group, portion).aHead();
    }

    private static String forTheGroup(Feeding put) {
        return put.aDay()
                + put.bales(false)
                        .map(bales -> ", %s of %s".formatted(bales, put.bale().orElseThrow()))
                        .orElse("");
    }
}
