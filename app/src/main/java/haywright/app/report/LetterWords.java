package haywright.app.report;

import haywright.app.report.FeedLetter.Part;
import haywright.app.words.Feeding;
import haywright.app.words.HerdWords;
import haywright.app.words.Likely;
import haywright.app.words.Show;
import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.diet.DietRow;
import haywright.forage.Analyte;
import haywright.outlook.FeedingDangers;
import haywright.outlook.TestedFor;
import haywright.outlook.Yard;
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
import java.util.UUID;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * An answer of the engine put into the feeder's words: short sentences, one a line, few numbers.
 *
 * @param answer a ration, or what stands in its way
 * @param mix the ration in amounts that can be weighed out; empty where there is none
 * @param now what the group gets today, if anybody has said it
 */
record LetterWords(Yard yard, Group group, RationAnswer answer, Optional<HandMix> mix, Optional<HandMix> now) {
    static final String NAME = "name";
    static final String NAME_NOTE = "name_note";
    static final String HEAD = "head";
    static final String MILD = "mild";
    static final String RANCH = "ranch";
    static final String ADVISER = "adviser";

    private static final Pattern NUMBER = Pattern.compile("[0-9]+([.,][0-9]+)*");
    /** "12-8", "44 %" at the end of a name. */
    private static final Pattern GRADE = Pattern.compile("\\s+[0-9][0-9.,:/-]*\\s*%?$");
    /** Nobody reads more at a bunk in the dark. */
    private static final int MOST_NUMBERS = 12;
    /** The day and the year. */
    private static final int DATE_NUMBERS = 2;

    static LetterWords of(Yard yard, Group group) {
        var answer = yard.ration(group);
        Optional<HandMix> mix =
                answer instanceof Ration ration ? Optional.of(yard.weighable(group, ration)) : Optional.empty();
        return new LetterWords(yard, group, answer, mix, yard.fedNow(group));
    }

    Map<String, String> figures() {
        var figures = new LinkedHashMap<String, String>();
        var name = group.name().strip();
        int bracket = name.endsWith(")") ? name.indexOf(" (") : -1;
        figures.put(NAME, bracket < 0 ? name : name.substring(0, bracket));
        figures.put(NAME_NOTE, bracket < 0 ? "" : name.substring(bracket + 2, name.length() - 1));
        figures.put(RANCH, yard.ranch().name());
        figures.put(ADVISER, yard.ranch().settings().adviser());
        figures.put(MILD, HerdWords.figured(yard.ranch().settings(), List.of(group), yard.day(), yard.day(), true));
        figures.put(HEAD, Show.number(group.head(), 0) + " head");
        put(figures, Part.WHAT_TO_DO, whatToDo());
        put(figures, Part.WATCH_FOR, watchFor());
        put(figures, Part.RESTS_ON, restsOn());
        // Money is said only while the page can hold one more number.
        long numbers = DATE_NUMBERS + numbersIn(table().toString()) + numbersIn(figures.toString());
        put(figures, Part.WHY, why(MOST_NUMBERS - numbers));
        return figures;
    }

    private static void put(Map<String, String> figures, Part part, List<String> lines) {
        figures.put(part.id(), String.join("\n", lines));
    }

    private static long numbersIn(String text) {
        return NUMBER.matcher(text).results().count();
    }

    /** What is to be fed: the ration, or what is fed now where there is none, without what may not be fed. */
    private List<Portion> portions() {
        if (mix.isPresent()) {
            return mix.get().portions();
        }
        return now.map(mix -> mix.portions().stream()
                        .filter(p -> mix.notAllowed().stream()
                                .noneMatch(out -> out.feed().equals(p.feed().feed())))
                        .toList())
                .orElse(List.of());
    }

    List<Letter.Row> table() {
        return portions().stream().map(this::row).toList();
    }

    private Letter.Row row(Portion portion) {
        var lot = lot(portion);
        var put = new Feeding(portion.kgPutOut(), group.head(), yard.baleKg(portion));
        boolean weighs =
                yard.ranch().outfit().mixing().mixes() && yard.ranch().outfit().scale();
        return new Letter.Row(
                lot == null ? spoken(portion) : name(portion),
                lot == null ? "bought" : lot.where(),
                put.aHead(),
                portion.feed().feed().isLooseMineral()
                        ? "free choice"
                        : put.bales(weighs).orElseGet(put::aDay));
    }

    private List<String> whatToDo() {
        return answer instanceof Ration ration ? feedThis(ration) : feedAsNow((NoRation) answer);
    }

    private List<String> feedThis(Ration ration) {
        var says = new ArrayList<String>();
        says.add("Feed %s what the table shows, each day%s."
                .formatted(them(), yard.ranch().outfit().timesADay() > 1 ? ", split into even feedings" : ""));
        loads().ifPresent(says::add);
        if (now.isEmpty()) {
            says.add("Bring in what is new to them bit by bit, over one to two weeks.");
        }
        var fresh = newTo();
        if (!fresh.isEmpty()) {
            says.add("New to them: %s. Bring %s in bit by bit, over one to two weeks."
                    .formatted(PlainLimits.list(fresh), fresh.size() == 1 ? "it" : "these"));
        }
        portions().stream()
                .filter(p -> lot(p) == null)
                .map(this::spoken)
                .reduce((a, b) -> a + "; " + b)
                .ifPresent(buy -> says.add("Buy before you start: " + buy + "."));
        says.addAll(Cautions.keepOut(ration.diet().leftOut()));
        return says;
    }

    private List<String> feedAsNow(NoRation no) {
        var says = new ArrayList<String>();
        says.add(
                table().isEmpty()
                        ? "Feed %s as you do now until this is settled.".formatted(them())
                        : "Feed %s as now, as the table shows, until this is settled.".formatted(them()));
        says.addAll(Cautions.keepOut(no.diet().leftOut()));
        says.add("What would help: " + String.join(", or ", PlainLimits.wouldHelp(no)) + ".");
        return says;
    }

    private Optional<String> loads() {
        var holds = yard.ranch().outfit().mixerHolds();
        if (!yard.ranch().outfit().mixing().mixes() || holds == null || !(holds.base() > 0)) {
            return Optional.empty();
        }
        double kg = portions().stream()
                .mapToDouble(p -> p.kgPutOut() * group.head())
                .sum();
        return Optional.of(
                kg <= holds.base()
                        ? "Mix it in the wagon. It fits in one load."
                        : "Mix it in the wagon, in even loads.");
    }

    /** Feeds of the ration that they do not get today; empty when nobody has said what they get. */
    private List<String> newTo() {
        return now.map(today -> portions().stream()
                        .filter(p -> !p.feed().feed().isLooseMineral())
                        .filter(p -> today.portions().stream()
                                .noneMatch(q -> q.feed()
                                        .feed()
                                        .id()
                                        .equals(p.feed().feed().id())))
                        .map(this::spoken)
                        .toList())
                .orElse(List.of());
    }

    private List<String> why(long numbersLeft) {
        var says = new ArrayList<String>();
        if (answer instanceof Ration ration) {
            var fed = mix.orElseThrow();
            if (numbersLeft > 0) {
                says.add("This costs %s a head a day.".formatted(Show.dollars(fed.cost())));
            }
            now.ifPresent(today -> says.add(against(fed, today, numbersLeft > 1)));
            says.add("It is the cheapest mix here that meets their need.");
            PlainLimits.shortOf(fed)
                    .ifPresent(of -> says.add("Rounded to what can be weighed, it is a hair %s.".formatted(of)));
            stage(ration).ifPresent(says::add);
        } else {
            var no = (NoRation) answer;
            boolean onlyWishes = !no.conflicts().isEmpty()
                    && no.conflicts().stream().allMatch(c -> c.row().kind() == DietRow.Kind.CHOICE);
            says.add(
                    onlyWishes
                            ? "No mix does all that is asked of it."
                            : "No mix of the feeds at hand gives them all they need.");
            says.add(PlainLimits.standsInTheWay(no));
            now.ifPresent(
                    mix -> PlainLimits.shortOf(mix).ifPresent(of -> says.add("What they get now is " + of + ".")));
        }
        return says;
    }

    private static String against(HandMix fed, HandMix today, boolean inDollars) {
        double saves = today.cost() - fed.cost();
        var money = Math.abs(saves) < 0.005
                ? "What they get now costs the same"
                : "What they get now costs %s%s"
                        .formatted(inDollars ? money(Math.abs(saves)) + " " : "", saves > 0 ? "more" : "less");
        return PlainLimits.shortOf(today)
                .map(of -> money + (saves < 0 ? " but is " : " and is ") + of + ".")
                .orElse(money + ".");
    }

    private static String money(double dollars) {
        return dollars < 0.995 ? Show.number(100 * dollars, 0) + " cents" : Show.dollars(dollars);
    }

    private static Optional<String> stage(Ration ration) {
        var need = ration.diet().need();
        if (need.milkingShare() > 0.5) {
            return Optional.of("They are in milk.");
        }
        if (need.animals() == AnimalClass.GROWING) {
            return Optional.of("It carries the gain you want.");
        }
        return need.pregnantShare() > 0.5 ? Optional.of("They are with calf.") : Optional.empty();
    }

    private List<String> watchFor() {
        var says = new ArrayList<String>();
        var call = yard.ranch().settings().adviser().isBlank() ? "your adviser" : plainAdviser();
        says.add("Call %s if they lose flesh, leave feed, or deep cold comes.".formatted(call));
        says.add("Call the vet first if any are sick, bloated or down.");
        says.addAll(Cautions.with(portions(), yard.ranch().lots()));
        FeedingDangers.of(yard, yard.question(group).diet(), portions()).forEach(caution -> says.add(caution.words()));
        says.add("Your vet and local rules come before this page.");
        return says;
    }

    private String plainAdviser() {
        return yard.ranch().settings().adviser().replaceAll("\\s*\\(.*\\)\\s*$", "");
    }

    private List<String> restsOn() {
        var reports = new ArrayList<String>();
        var book = new ArrayList<String>();
        var tags = new ArrayList<String>();
        for (var portion : portions()) {
            var lot = lot(portion);
            var name = spoken(portion);
            if (lot != null) {
                var tested = TestedFor.of(yard.ranch(), lot);
                var lacks = tested.isForFeeding() ? "" : " (not tested for %s)".formatted(tested.lacks());
                (tested.reports() == 0 ? book : reports).add(tested.reports() == 0 ? name : name + lacks);
            } else {
                var sale = yard.ranch().feedsForSale().get(id(portion));
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
            says.add("Feed book only, not tested: " + String.join("; ", book) + ".");
        }
        protein().ifPresent(says::add);
        return says;
    }

    /** How far the feed that brings most protein may lie, in words: the page holds no more numbers. */
    private Optional<String> protein() {
        return portions().stream()
                .max(Comparator.comparingDouble(p ->
                        p.kg() * p.feed().feed().composition().value(Analyte.CP).orElse(0)))
                .flatMap(p -> Likely.pointsOfProtein(p.feed().feed().composition())
                        .map(points -> "The protein of %s may lie %s above or below what we count on."
                                .formatted(spoken(p), points)));
    }

    private String them() {
        return switch (group.animals()) {
            case MATURE_COW -> "the cows";
            case FIRST_CALF_HEIFER, BRED_HEIFER -> "the heifers";
            case BULL -> "the bulls";
            case GROWING -> "the calves";
        };
    }

    private @Nullable Lot lot(Portion portion) {
        return yard.ranch().lots().get(id(portion));
    }

    private static UUID id(Portion portion) {
        return UUID.fromString(portion.feed().feed().id());
    }

    /** Without the figures of a grade, as people say it, where that leaves no two feeds of the same name. */
    private String spoken(Portion portion) {
        var full = name(portion);
        var plain = GRADE.matcher(full).replaceAll("").strip();
        boolean alone = portions().stream()
                        .filter(p ->
                                GRADE.matcher(name(p)).replaceAll("").strip().equals(plain))
                        .count()
                == 1;
        // the number of a lot called "M 679" is its name and no grade
        boolean isGrade = lot(portion) == null || plain.contains(" ");
        return alone && isGrade && !plain.isEmpty() ? plain : full;
    }

    private static String name(Portion portion) {
        return portion.feed().feed().name();
    }
}
