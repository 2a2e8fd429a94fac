package haywright.app.report;

import haywright.app.report.FeedLetter.Part;
import haywright.app.words.ColdWords;
import haywright.app.words.Feeding;
import haywright.app.words.HerdWords;
import haywright.app.words.Likely;
import haywright.app.words.Measures;
import haywright.app.words.NumberWords;
import haywright.app.words.Show;
import haywright.app.words.ration.CountedTdn;
import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.diet.GrainFed;
import haywright.feeding.ColdSnap;
import haywright.feeding.Offer;
import haywright.feeding.Offers;
import haywright.feeding.WouldCarry;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.outlook.FeedingDangers;
import haywright.outlook.TestedFor;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.Letter;
import haywright.ranch.Lot;
import haywright.ration.HandMix;
import haywright.ration.NoRation;
import haywright.ration.Portion;
import haywright.ration.Ration;
import haywright.ration.RationAnswer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * An answer of the engine put into the feeder's words: short sentences, one a line, few numbers.
 *
 * @param answer a ration, or what stands in its way
 * @param mix the ration in amounts that can be weighed out; empty where there is none
 * @param now what the group gets today, if anybody has said it
 */
record LetterWords(
        Offers offers, Yard yard, Group group, RationAnswer answer, Optional<HandMix> mix, Optional<HandMix> now) {
    /** Share of what they would eat free choice from which some stems are left (judgment). */
    private static final double ENOUGH = 0.95;

    /** Feeds that are named; of more the table says which are bought. */
    private static final int MOST_NAMED = 2;

    static final String NAME = "name";
    static final String NAME_NOTE = "name_note";
    static final String HEAD = "head";
    static final String MILD = "mild";
    static final String RANCH = "ranch";
    static final String ADVISER = "adviser";
    static final String PEN = "pen";
    static final String VALID = "valid";
    /** What stands over the last column. */
    static final String LOADED = "loaded";
    /** Over what the scale reads: pounds of a feed with all before it. */
    static final String SCALE = "Scale, running total";

    /** What moved its figures, in few words. */
    static final String FIGURED = "figured";

    /** What can kill, a sentence a line, for a text message: it comes first there. */
    static final String DEADLY = "deadly";

    /** Of the change and the cold, for a text message. */
    static final String AFTER = "after";

    /** Where a feed lies that has to be bought. */
    static final String BOUGHT = "bought";

    private static final Pattern ASSUMED = Pattern.compile("Assumed: [^.]*\\.");

    private static final Pattern NUMBER = Pattern.compile("[0-9]+([.,][0-9]+)*");
    /** Nobody reads more at a bunk in the dark. */
    private static final int MOST_NUMBERS = 12;

    private static final int MOST_WORDS = 300;

    private static final double SODIUM_IN_SALT = 39.3;

    private static final double SALT_OUNCES = 1.4;
    private static final double SALT_POUNDS = 1350;

    /** Of headings, date and foot, with a margin. */
    private static final int FIXED_WORDS = 30;

    /** Of the month: a page in the tractor is of this winter. */
    private static final int DATE_NUMBERS = 1;

    static LetterWords of(Offers offers) {
        return new LetterWords(
                offers,
                offers.yard(),
                offers.group(),
                offers.answer(),
                offers.sure().map(Offer::mix),
                offers.now().map(Offer::mix));
    }

    Map<String, String> figures() {
        var figures = new LinkedHashMap<String, String>();
        var name = group.name().strip();
        int bracket = name.endsWith(")") ? name.indexOf(" (") : -1;
        figures.put(NAME, bracket < 0 ? name : name.substring(0, bracket));
        figures.put(NAME_NOTE, bracket < 0 ? "" : name.substring(bracket + 2, name.length() - 1));
        figures.put(RANCH, yard.ranch().name());
        figures.put(ADVISER, yard.ranch().settings().adviser());
        figures.put(MILD, HerdWords.figured(yard.ranch(), List.of(group), yard.day(), yard.day(), true));
        figures.put(FIGURED, figured(figures.getOrDefault(MILD, "")));
        figures.put(HEAD, Show.number(group.head(), 0) + " head");
        figures.put(PEN, pen());
        figures.put(VALID, valid());
        figures.put(LOADED, Loads.isWeighed(yard) && !portions().isEmpty() ? SCALE : "Whole group");
        put(figures, Part.WHAT_TO_DO, whatToDo());
        put(figures, Part.WATCH_FOR, watchFor());
        put(figures, Part.RESTS_ON, restsOn());
        // Money is said only while the page can hold one more number; where the figures come from is not printed.
        var printed = new LinkedHashMap<>(figures);
        printed.remove(MILD);
        long numbers = DATE_NUMBERS
                + numbersIn(table().toString())
                + numbersIn(printed.values().toString());
        long left = MOST_NUMBERS - numbers;
        var why = LetterWhy.of(this);
        put(figures, Part.WHY, why.why(left));
        add(figures, Part.WHY, why.thin());
        var shown = new LinkedHashMap<>(figures);
        shown.remove(MILD);
        add(
                figures,
                Part.WHY,
                why.shortOfHay(DATE_NUMBERS
                                + numbersIn(table().toString())
                                + numbersIn(shown.values().toString())
                        < MOST_NUMBERS));
        // Said where the page can still hold the words, in this order.
        if (figures.getOrDefault(Part.WHY.id(), "").indexOf('$') < 0) {
            fill(figures, Part.WHY, why.price());
        }
        if (answer instanceof Ration) {
            fill(figures, Part.WHY, mix.flatMap(fed -> now.map(today -> why.against(fed, today, left > 1))));
        }
        fill(figures, Part.RESTS_ON, protein());
        fill(figures, Part.WHY, why.stage());
        fill(figures, Part.WHY, why.lasts());
        // Of the message alone, and on no page.
        figures.put(
                DEADLY,
                String.join(
                        "\n",
                        Cautions.deadly(yard, offers.rations().question(group).diet(), portions())));
        figures.put(AFTER, String.join("\n", portions().isEmpty() ? List.of() : after()));
        return figures;
    }

    private static void add(Map<String, String> figures, Part part, Optional<String> sentence) {
        sentence.ifPresent(says -> figures.merge(part.id(), says, (one, other) -> one + "\n" + other));
    }

    private void fill(Map<String, String> figures, Part part, Optional<String> sentence) {
        var printed = new LinkedHashMap<>(figures);
        printed.remove(MILD);
        long words = FIXED_WORDS + wordsIn(table().toString()) + wordsIn(String.join(" ", printed.values()));
        add(figures, part, sentence.filter(says -> words + wordsIn(says) <= MOST_WORDS));
    }

    /** Without the figures, which are on the bench: the page holds no more numbers. */
    private String figured(String whole) {
        var settings = yard.ranch().settings();
        var weather = settings.weather();
        var says = new ArrayList<String>();
        says.add(
                weather == null
                        ? HerdWords.MILD
                        : "Figured for the usual cold at %s, not a storm.".formatted(weather.place()));
        if (settings.herdFactor() != null) {
            says.add("Cold and waste are counted as last winter’s feeding said.");
        }
        ASSUMED.matcher(whole).results().forEach(found -> says.add(found.group().replaceAll(" \\([^)]*\\)", "")));
        return String.join(" ", says);
    }

    /** {@code orange paint · east gate}; empty where nobody said. */
    private String pen() {
        var pen = yard.ranch().pen(group.id());
        return Stream.of(pen.paintMark(), pen.gate())
                .filter(words -> !words.isBlank())
                .collect(Collectors.joining(" · "));
    }

    private String valid() {
        if (portions().isEmpty()) {
            return "";
        }
        var good = offers.goodUntil();
        var ends = switch (good.why()) {
            case FEED_GONE ->
                "then %s is gone"
                        .formatted(
                                good.gone().map(f -> names().spoken(f.feed())).orElse("a feed"));
            case NEED_MORE -> "then they need more";
            case GRASS -> "then they go to pasture";
            case LOOK_AGAIN -> "then look again";
        };
        return "Good until %s: %s. Call if feed, head or weight changes.".formatted(Show.day(good.day()), ends);
    }

    private static void put(Map<String, String> figures, Part part, List<String> lines) {
        figures.put(part.id(), String.join("\n", lines));
    }

    private static long wordsIn(String text) {
        return text.isBlank() ? 0 : text.strip().split("\\s+").length;
    }

    private static long numbersIn(String text) {
        return NUMBER.matcher(text).results().count();
    }

    /** What is to be fed: the ration, or what is fed now where there is none, without what may not be fed. */
    private List<Portion> portions() {
        return new PutOut(offers).portions();
    }

    SpokenFeeds names() {
        return new SpokenFeeds(yard, portions());
    }

    /** In the order in which they are loaded or put out; what is free choice last. */
    List<Letter.Row> table() {
        var loads = Loads.of(offers);
        var rows = new ArrayList<Letter.Row>();
        for (var step : loads.steps()) {
            var row = row(step.portion());
            rows.add(Loads.isWeighed(yard) ? new Letter.Row(row.feed(), row.where(), row.aHead(), step.reads()) : row);
        }
        portions().stream()
                .filter(p -> p.feed().feed().isLooseMineral())
                .map(this::row)
                .forEach(rows::add);
        return rows;
    }

    private Letter.Row row(Portion portion) {
        var lot = names().lot(portion);
        var put = new Feeding(portion.kgPutOut(), group.head(), yard.baleKg(portion));
        return new Letter.Row(
                lot == null ? names().spoken(portion) : SpokenFeeds.name(portion),
                lot == null ? BOUGHT : lot.where(),
                put.aHead(),
                portion.feed().feed().isLooseMineral()
                        ? "free choice"
                        : put.bales(false).orElseGet(put::aDay));
    }

    private List<String> whatToDo() {
        return answer instanceof Ration ration ? feedThis(ration) : feedAsNow((NoRation) answer);
    }

    private List<String> feedThis(Ration ration) {
        var says = new ArrayList<String>();
        says.add(
                Loads.isWeighed(yard)
                        ? "Load in this order. Stop at these numbers." + loads()
                        : "Feed %s this every day%s."
                                .formatted(
                                        them(),
                                        yard.ranch().outfit().timesADay() > 1 ? ", split into even feedings" : ""));
        if (Loads.isWeighed(yard)) {
            says.add(Loads.NOT_ZEROED);
        }
        boolean bales = portions().stream().anyMatch(p -> yard.baleKg(p).isPresent());
        if (bales) {
            says.add("Net wrap off. Set moldy bales aside.");
        }
        if (hasGrain() && !yard.ranch().outfit().mixing().mixes()) {
            says.add("Hay first, then grain.");
        }
        if (isInTwoFeedings()) {
            says.add(yard.ranch().outfit().timesADay() < 2 ? "Grain twice a day, not once." : "Grain in two feedings.");
        }
        says.add("Open the water first. " + salt());
        says.addAll(Changeover.words(offers, names()::spoken));
        var bought = portions().stream()
                .filter(p -> names().lot(p) == null)
                .map(names()::spoken)
                .toList();
        if (!bought.isEmpty()) {
            says.add(
                    bought.size() > MOST_NAMED
                            ? "Buy the feeds marked bought first."
                            : "Buy first: " + PlainLimits.list(bought) + ".");
        }
        says.addAll(Cautions.keepOut(ration.diet().leftOut()));
        return says;
    }

    /**
     * Beside what the mineral's tag says of sodium: an ounce and a half a head and day at 1,350 lb (Alberta, Yaremcio 2017:
     * 35 to 45 g for 1,300 to 1,400 lb), by body weight, to half an ounce. Salt is 39 % sodium.
     */
    private String salt() {
        double ounces = portions().stream()
                .filter(p -> p.feed().feed().isLooseMineral())
                .mapToDouble(p -> Unit.OUNCE.fromBase(p.kgPutOut())
                        * p.feed().feed().composition().value(Analyte.NA).orElse(0)
                        / SODIUM_IN_SALT)
                .sum();
        double weight = offers.planned().weight().in(Unit.POUND);
        int halves = (int) Math.rint(2 * (SALT_OUNCES * weight / SALT_POUNDS - ounces));
        return switch (Math.max(0, halves)) {
            case 0 -> "Salt is in the mineral.";
            case 1 -> "Salt: half an ounce a head.";
            case 2 -> "Salt: an ounce a head.";
            case 3 -> "Salt: an ounce and a half.";
            default -> "Salt: two ounces a head.";
        };
    }

    private String loads() {
        var loads = Loads.of(offers);
        return loads.count() == 1 ? "" : " " + loads.words();
    }

    /**
     * Of growing cattle that get more than half a percent of body weight, beyond which acid and bloat begin (NDSU, Forage
     * Matters, of cows); the limit that they are held to, one percent, is from memory.
     */
    private boolean isInTwoFeedings() {
        double grain = portions().stream()
                .filter(p -> p.feed().feed().feedClass() == FeedClass.GRAIN)
                .mapToDouble(Portion::kgPutOut)
                .sum();
        return offers.group().animals() == AnimalClass.GROWING
                && yard.ranch().outfit().timesADay() == 1
                && grain
                        > GrainFed.percentAFeeding()
                                / 100
                                * offers.planned().weight().base();
    }

    private boolean hasGrain() {
        return portions().stream().anyMatch(p -> p.feed().feed().feedClass() == FeedClass.GRAIN);
    }

    private List<String> feedAsNow(NoRation no) {
        var says = new ArrayList<String>();
        says.add(new PutOut(offers)
                .stop()
                .orElse(
                        table().isEmpty()
                                ? "No ration works for %s yet. Call %s before you feed from this page."
                                        .formatted(them(), call().adviser())
                                : "Feed %s as now, as the table shows, until this is settled.".formatted(them())));
        says.addAll(Cautions.keepOut(no.diet().leftOut()));
        says.add("What would help: " + String.join(", or ", PlainLimits.wouldHelp(no)) + ".");
        WouldCarry.of(offers.rations(), group, offers.days())
                .ifPresent(carry -> says.add("To buy: %s per head per day would be enough beside what is here."
                        .formatted(carry.bought().stream()
                                .map(LetterWords::pounds)
                                .collect(Collectors.joining(" and ")))));
        return says;
    }

    /** {@code about two and a half pounds of grain}. */
    private static String pounds(WouldCarry.Bought one) {
        double pounds = Math.max(0.5, Unit.POUND.fromBase(one.kgADay()));
        return "about %s pound%s of %s"
                .formatted(
                        NumberWords.halves(pounds),
                        Math.round(2 * pounds) <= 2 ? "" : "s",
                        one.kind().words());
    }

    private List<String> watchFor() {
        var says = new ArrayList<String>();
        says.add("Sick, bloated, down or weak cattle: stop. Call %s first.".formatted(call().vet()));
        says.add("Call %s if they lose condition or do not clean up.".formatted(call().adviser()));
        says.add(isFed(ENOUGH) ? "A few stems left, cattle quiet: enough." : "Gone by dark, cattle quiet: enough.");
        if (!portions().isEmpty()) {
            says.add(cold() + (isSheltered() ? " Wet coats, no windbreak: call." : " Wet coats: call."));
        }
        says.addAll(Cautions.with(portions(), yard.ranch().lots()));
        FeedingDangers.of(yard, offers.rations().question(group).diet(), portions())
                .forEach(caution -> says.add(caution.words()));
        says.add("Vet and local rules come first.");
        return says;
    }

    /** Whether what they get is so large a share of what they would eat of it free choice. */
    private boolean isFed(double share) {
        return !(answer instanceof Ration ration)
                || ration.kg()
                        >= share * ration.diet().need().intake(ration.dietNem()).kilograms();
    }

    private List<String> after() {
        var says = new ArrayList<>(Changeover.words(offers, names()::spoken));
        says.add(cold());
        return says;
    }

    private WhomToCall call() {
        return new WhomToCall(yard.ranch());
    }

    /** Whether what the cold takes is figured behind a windbreak: in the open it takes more, and sooner. */
    private boolean isSheltered() {
        var weather = offers.yard().ranch().settings().weather();
        return weather != null && weather.isSheltered();
    }

    /** In words: the page holds no more numbers. Always something: every group meets cold. */
    private String cold() {
        var cold = offers.cold();
        var hay = cold.flatMap(ColdSnap::hay).map(feed -> names().spoken(feed.feed()));
        if (hay.isEmpty()) {
            return "Hard cold: ask before you add hay. No more straw.";
        }
        var rule = cold.get();
        if (ColdWords.isFull(rule)) {
            return "Hard cold: they are full and need richer feed. Call.";
        }
        return ColdWords.degreesAPound(rule) >= 1
                ? "Colder than %s: add a pound a head of %s for each %s degrees%s."
                        .formatted(
                                NumberWords.degrees(
                                        Math.rint(Measures.temperature().fromBase(rule.below()))),
                                hay.get(),
                                NumberWords.halves(ColdWords.degreesAPound(rule)),
                                rule.fills()
                                        ? ", %s at most, then call"
                                                .formatted(NumberWords.halves(ColdWords.halves(rule.most())))
                                        : "")
                : "Hard cold: more %s, no more straw. Call.".formatted(hay.get());
    }

    private List<String> restsOn() {
        var reports = new ArrayList<String>();
        var book = new ArrayList<String>();
        var tags = new ArrayList<String>();
        var counted = CountedTdn.of(yard, portions());
        for (var portion : portions()) {
            var lot = names().lot(portion);
            var name = names().spoken(portion);
            if (lot != null) {
                var tested = TestedFor.of(yard.ranch(), lot);
                var lacks = tested.isForFeeding() ? "" : " (not tested for %s)".formatted(tested.lacks());
                (tested.reports() == 0 ? book : reports)
                        .add(tested.reports() == 0 ? name : name + lacks + energy(counted, lot));
            } else if (!portion.feed().feed().isLooseMineral()) {
                var sale = yard.ranch().feedsForSale().get(SpokenFeeds.id(portion));
                (sale != null && !sale.tag().isEmpty() ? tags : book).add(name);
            }
        }
        var says = new ArrayList<String>();
        if (!reports.isEmpty()) {
            says.add("Lab report: " + String.join("; ", reports) + ".");
        }
        if (!tags.isEmpty()) {
            says.add("Feed tag: " + String.join("; ", tags) + ".");
        }
        if (!book.isEmpty()) {
            says.add(
                    book.size() > 1 && says.size() > 0
                            ? "The other feeds: book values, not tested."
                            : "Not tested: " + String.join("; ", book) + ".");
        }
        return says;
    }

    /** Where energy is not counted by the laboratory's own figure: in words, the page holds no more numbers. */
    private static String energy(List<CountedTdn> counted, Lot lot) {
        return counted.stream()
                .filter(apart -> apart.lot().equals(lot))
                .findFirst()
                .map(apart -> " (%s lab TDN)".formatted(apart.words()))
                .orElse("");
    }

    /** How far the feed that brings most protein may lie, in words: the page holds no more numbers. */
    private Optional<String> protein() {
        return portions().stream()
                .max(Comparator.comparingDouble(p ->
                        p.kg() * p.feed().feed().composition().value(Analyte.CP).orElse(0)))
                .flatMap(p -> Likely.pointsOfProtein(p.feed().feed().composition())
                        .map(points -> "Protein of %s may be off by %s.".formatted(names().spoken(p), points)));
    }

    private String them() {
        return switch (group.animals()) {
            case MATURE_COW -> "the cows";
            case FIRST_CALF_HEIFER, BRED_HEIFER -> "the heifers";
            case BULL -> "the bulls";
            case GROWING -> "the calves";
        };
    }
}
