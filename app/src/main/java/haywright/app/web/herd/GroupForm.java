package haywright.app.web.herd;

import static haywright.app.web.form.Field.amount;
import static haywright.app.web.form.Field.choice;
import static haywright.app.web.form.Field.comingDate;
import static haywright.app.web.form.Field.count;
import static haywright.app.web.form.Field.number;
import static haywright.app.web.form.Field.pastDate;
import static haywright.app.web.form.Field.text;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.form.Field;
import haywright.app.web.form.Fields;
import haywright.app.web.form.Part;
import haywright.app.words.Show;
import haywright.cattle.AnimalClass;
import haywright.cattle.Reserves;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.HerdCheck;
import haywright.cattle.need.ProposedGain;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.workings.Note;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The form of one group, and the group that comes out of it: ten boxes that everybody fills in, the rest folded. Its
 * calving weeks are {@link CalvingForm}.
 */
public final class GroupForm {
    static final Field WEIGHT = amount(
                    "weight",
                    "Average weight",
                    Unit.POUND,
                    "Full, without the unborn calf. Cull sale tickets beat a guess.")
            .needed("Enter a weight. A good guess will do.");
    static final Field SCORE = number(
                    "conditionScore",
                    "Body condition score",
                    "Average for the group, from 1 (starved) to 9 (very fat). Halves like 5½ are fine. At 5 only the last two ribs show.")
            .needed("Score a dozen and enter the average.");
    /** Nobody scores calves as a matter of course. */
    private static final Field SCORE_OF_CALVES = number(
            "conditionScore",
            "Body condition score",
            "From 1 (starved) to 9 (very fat). Empty: 5, said when you save.");

    static final Field WANTED = number(
            "wantedScore",
            "Score to calve at",
            "Empty: 5 for cows, 6 for heifers, at no more than half a score a month. To just hold them enter their score today.");
    static final Field WEIGHED_ON = pastDate(
                    "weighedOn", "Weighed on", "Such as Nov 12. For a guess, the day it is for.")
            .needed("Enter the day.");
    static final Field TURNOUT = comingDate("turnout", "Turnout date", "Empty: the ranch’s.");
    static final Field GAIN = amount(
            "gain",
            "Gain to feed for",
            Unit.POUND_A_DAY,
            "0 to maintain. Empty: 1.5 lb for growing cattle, what reaches calving weight for heifers, 0 for mature bulls;"
                    + " said when you save.");

    private static final List<Option> SCALES = List.of(
            new Option("no", "Full: fed and watered"), new Option("yes", "Shrunk: a night without feed and water"));

    private static final Map<AnimalClass, Fields<Group>> FIELDS = new EnumMap<>(AnimalClass.class);

    static {
        for (var animals : AnimalClass.values()) {
            FIELDS.put(animals, fields(animals));
        }
    }

    /** Of calves where nobody scored them: the middle of the scale, judgment. */
    private static final double USUAL_SCORE = 5;

    private static final int A_YEAR = 366;

    private GroupForm() {}

    /** The boxes of a class of cattle, in the order of the page. */
    public static Fields<Group> of(AnimalClass animals) {
        var fields = FIELDS.get(animals);
        if (fields == null) {
            throw new IllegalStateException(animals + " has no form");
        }
        return fields;
    }

    private static Fields<Group> fields(AnimalClass animals) {
        var name = text("name", "Name of the group", "Such as “%s”.".formatted(example(animals)))
                .needed("Enter a name.");
        var head = count("head", "Head", "").needed("Enter how many are fed in this group.");
        var fields = Fields.of(Group.class);
        if (calves(animals)) {
            fields.section("", name, head, WEIGHT, SCORE, new CalvingForm.Dates(), new BreedPart());
        } else {
            fields.section("", name, head, WEIGHT, score(animals), new BreedPart());
        }
        if (gains(animals)) {
            fields.section("Growth", GAIN, mature(animals));
        }
        var ends = "Fill in both, or neither.";
        var weights = new Part.Together(
                "weights",
                Fields.of(Group.Weights.class)
                        .section(
                                "",
                                amount("lightest", "Most weigh from", Unit.POUND, "9 in 10 are between the two."),
                                amount("heaviest", "Up to", Unit.POUND, "")),
                ends);
        var scores = new Part.Together(
                "scores",
                Fields.of(Group.Scores.class)
                        .section(
                                "",
                                number("thinnest", "Most score from", "9 in 10 are between the two."),
                                number("fattest", "Up to score", "")),
                ends);
        var shrunk = choice("shrunk", "The weight above is", "The two are 4 % apart.", SCALES);
        if (gains(animals)) {
            fields.folded("Scale, day and spread of the weights", shrunk, WEIGHED_ON, weights, scores);
        } else {
            fields.folded("Scale, day and spread of the weights", shrunk, WEIGHED_ON, mature(animals), weights, scores);
        }
        if (calves(animals)) {
            fields.folded(
                    "Condition at calving, calves and milk",
                    WANTED,
                    comingDate("weaning", "Weaning date", "Empty: milk counted for 30 weeks."),
                    amount("calfBirthWeight", "Birth weight", Unit.POUND, "Empty: the breed’s."),
                    amount(
                            "peakMilk",
                            "Milk at the peak",
                            Unit.POUND_A_DAY,
                            "Empty: the breed’s; 0.74 of it with a first calf, 0.88 with a second."));
        } else if (isYoung(animals)) {
            fields.folded(
                    "Weaning", pastDate("weaning", "Weaned or arrived on", "They eat less for the first four weeks."));
        }
        return fields.folded("Turnout", TURNOUT);
    }

    private static String example(AnimalClass animals) {
        return switch (animals) {
            case MATURE_COW -> "old cows";
            case FIRST_CALF_HEIFER, BRED_HEIFER -> "heifers at the creek";
            case BULL -> "bulls";
            case GROWING -> "steer calves";
        };
    }

    private static Field score(AnimalClass animals) {
        return isYoung(animals) ? SCORE_OF_CALVES : SCORE;
    }

    private static Field mature(AnimalClass animals) {
        return switch (animals) {
            case MATURE_COW, BULL ->
                amount("matureWeight", "Weight at score 5", Unit.POUND, "Empty: from their weight and score.");
            case GROWING ->
                amount(
                        "matureWeight",
                        "Mature weight",
                        Unit.POUND,
                        "Replacement heifers: as cows at score 5. Fed cattle: when finished. Empty: your cows’.");
            case BRED_HEIFER, FIRST_CALF_HEIFER ->
                amount("matureWeight", "Mature weight", Unit.POUND, "As cows at score 5. Empty: your cows’.");
        };
    }

    public static boolean calves(AnimalClass animals) {
        return animals != AnimalClass.BULL && animals != AnimalClass.GROWING;
    }

    /** May have been weaned lately. */
    public static boolean isYoung(AnimalClass animals) {
        return animals == AnimalClass.GROWING;
    }

    /** Mature cows are fed to hold. */
    public static boolean gains(AnimalClass animals) {
        return animals != AnimalClass.MATURE_COW;
    }

    /** Questions that the form's own hints have answered before they are asked: its page sends them as confirmed. */
    public static final List<String> SAID = List.of("mature-as-cows", "mature-usual", "gain-proposed");

    /** Of a mature cow where the ranch has none to go by: judgment. */
    private static final Quantity USUAL_COW = Quantity.of(1300, Unit.POUND);

    /** What a new group's form begins with: said in the boxes, so that nothing is assumed out of sight. */
    static Map<String, String> fresh(Ranch ranch, LocalDate today) {
        var fresh = new LinkedHashMap<String, String>();
        fresh.put("shrunk", "no");
        fresh.put(WEIGHED_ON.name(), Show.date(today));
        ranch.groups().values().stream().reduce((before, last) -> last).ifPresent(last -> {
            var known = known(last);
            List.of("breed", "cross", "shrunk", WEIGHED_ON.name())
                    .forEach(name -> fresh.put(name, known.getOrDefault(name, "")));
        });
        return fresh;
    }

    /** What was left empty and taken, in words that go on a notice; empty where nothing was. */
    static String taken(Form form, Group group) {
        var taken = new ArrayList<String>();
        if (calves(group.animals())
                && !form.isEmpty(CalvingForm.FIRST.ask())
                && form.isEmpty(CalvingForm.WEEKS.ask())) {
            taken.add("%d weeks of calving, from %s"
                    .formatted(
                            CalvingForm.USUAL_WEEKS,
                            Show.date(group.firstCalving().orElseThrow())));
        }
        if (isYoung(group.animals()) && form.isEmpty(SCORE.ask())) {
            taken.add("condition score " + Show.significant(USUAL_SCORE, 2));
        }
        if (gains(group.animals())) {
            if (form.isEmpty(mature(group.animals()).ask()) && group.animals() != AnimalClass.BULL) {
                taken.add("mature weight " + Show.quantity(group.matureWeight()));
            }
            if (form.isEmpty(GAIN.ask())) {
                taken.add("gain " + Show.quantity(group.gain()));
            }
        }
        return taken.isEmpty() ? "" : ". Left empty, so taken: " + String.join("; ", taken);
    }

    static Map<String, String> known(Group group) {
        var known = new LinkedHashMap<>(of(group.animals()).known(group));
        if (group.gainTaken()) {
            known.put(GAIN.name(), ""); // nobody entered it: it is proposed again
        }
        return known;
    }

    /**
     * The group of a form, or nothing if anything is wrong with it or still asked about; then the form says what.
     *
     * @param before the group as it was; null for a new one
     * @param cows what mature cows of the ranch weigh at score 5; null where none are known
     */
    static Optional<Group> read(
            Form form, AnimalClass animals, UUID id, @Nullable Group before, @Nullable Quantity cows, LocalDate today) {
        var given = new LinkedHashMap<String, Object>();
        given.put("id", id);
        given.put("animals", animals);
        if (!calves(animals)) {
            given.put("calving", before == null ? List.of() : before.calving());
        }
        given.put("gainTaken", false);
        given.put("past", before == null ? List.of() : before.past());
        if (!gains(animals)) {
            given.put("gain", before == null ? Quantity.of(0, Unit.POUND_A_DAY) : before.gain());
        } else if (form.isEmpty(GAIN.ask())) {
            given.put("gain", Quantity.of(0, Unit.POUND_A_DAY));
        }
        if (isYoung(animals) && form.isEmpty(SCORE.ask())) {
            given.put(SCORE.name(), USUAL_SCORE);
        }
        var mature = mature(animals);
        if (form.isEmpty(mature.ask())) {
            given.put("matureWeight", matureWeight(form, animals, mature, cows));
        }
        var group = of(animals).read(form, given, before, today);
        if (group.isPresent()) {
            dates(form, group.get(), before, today);
            group = group.map(g -> proposed(form, g));
            check(form, group.get(), before, today);
        }
        return form.hasProblems() ? Optional.empty() : group;
    }

    /** Of cows and bulls, from what they weigh at their score; of heifers, what the ranch's cows weigh, asked. */
    private static Quantity matureWeight(Form form, AnimalClass animals, Field field, @Nullable Quantity cows) {
        if (animals.isGrown()) {
            var weight = form.maybeQuantity(WEIGHT.ask());
            var score = form.maybeNumber(SCORE.ask());
            if (weight == null || score == null) {
                return Quantity.of(1, Unit.POUND);
            }
            // a score that no cow has is named for itself; it must not make a weight that no cow has
            double possible = Math.max(1, Math.min(9, score));
            return Quantity.of(Math.rint(weight.value() / Reserves.weightRatio(possible)), weight.unit());
        }
        if (cows == null) {
            form.doubt(
                    field.ask(),
                    "mature-usual",
                    "Left empty, and no cows are entered to go by. Use %s, a usual cow?"
                            .formatted(Show.quantity(USUAL_COW)));
            return USUAL_COW;
        }
        form.doubt(
                field.ask(),
                "mature-as-cows",
                "Left empty. Your cows weigh %s at score 5. Use that?".formatted(Show.quantity(cows)));
        return cows;
    }

    /** Where the gain was left empty: the one proposed, asked. */
    private static Group proposed(Form form, Group group) {
        if (!gains(group.animals())
                || !form.isEmpty(GAIN.ask())
                || !form.problem(mature(group.animals()).ask()).isEmpty()) {
            return group;
        }
        var proposal = ProposedGain.of(group);
        if (proposal.isEmpty()) {
            form.text(GAIN.ask(), "Enter when they calve, and a gain is proposed; or enter a gain, 0 to maintain.");
            return group;
        }
        form.doubt(GAIN.ask(), "gain-proposed", "Left empty. " + words(proposal.get()) + " Use that?");
        return group.taking(proposal.get().gain());
    }

    private static String words(ProposedGain proposal) {
        var gain = Show.quantity(proposal.gain());
        return switch (proposal.to()) {
            case FIRST_CALVING, SECOND_CALVING ->
                "%s takes them to %s by %s, when they start to calve%s."
                        .formatted(
                                gain,
                                Show.pounds(proposal.weight()),
                                Show.date(proposal.on()),
                                proposal.to() == ProposedGain.To.SECOND_CALVING
                                        ? " again, a year after the first"
                                        : "");
            case GROW -> "%s is a usual winter gain for calves: good hay with some grain.".formatted(gain);
            case HOLD -> "They are mature: %s, to maintain.".formatted(gain);
        };
    }

    private static void dates(Form form, Group group, @Nullable Group before, LocalDate today) {
        var weighed = group.weighedOn();
        if (weighed.isAfter(today)) {
            form.refuse(
                    WEIGHED_ON.name(),
                    Show.date(weighed),
                    "this day is in the future; today is " + Show.date(today),
                    "Is the year right?");
        } else if (weighed.isBefore(today.minusDays(A_YEAR))
                && (before == null || !weighed.equals(before.weighedOn()))) {
            form.doubt(WEIGHED_ON.ask(), "weighed-long-ago", "That is over a year ago. Do they still weigh that?");
        }
        var turnout = group.turnout();
        if (turnout != null && turnout.isBefore(today) && (before == null || !turnout.equals(before.turnout()))) {
            form.doubt(TURNOUT.ask(), "turnout-past", Show.date(turnout) + " is past. Is the year right?");
        }
    }

    /** What is impossible is refused; what is unusual is asked about, unless it stood there before. */
    private static void check(Form form, Group group, @Nullable Group before, LocalDate today) {
        var known = before == null ? List.<Note>of() : HerdCheck.of(before, today);
        for (var note : HerdCheck.of(group, today)) {
            switch (note.level()) {
                case REFUSE -> form.refuse(field(form, note), "", note.words(), note.fix());
                case ASK -> {
                    if (!known.contains(note)) {
                        form.doubt(Ask.choice(field(form, note), "", ""), note.rule(), sentence(note));
                    }
                }
                case SAY -> {
                    // shown beside the group afterwards
                }
            }
        }
    }

    /** The box that calving was entered. */
    private static String field(Form form, Note note) {
        return note.field().equals("calving") && !form.isEmpty(CalvingForm.FIRST.ask())
                ? CalvingForm.FIRST.name()
                : note.field();
    }

    static String sentence(Note note) {
        return note.words() + ". " + note.fix() + (note.fix().endsWith("?") ? "" : ".");
    }
}
