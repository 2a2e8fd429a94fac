package haywright.app.web.herd;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.words.Show;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.Group;
import haywright.cattle.HerdCheck;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Note;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The form of one group, and the group that comes out of it. Its calving weeks are {@link CalvingForm}. */
public final class GroupForm {
    public static final Ask NAME =
            Ask.text("name", "What they are called on the ranch", "As you would say it at the gate.");
    public static final Ask HEAD = Ask.number("head", "Head", "");
    public static final Ask WEIGHT = Ask.amount(
            "weight",
            "What one weighs, on the average",
            Unit.POUND,
            "Without the calf in her. A look at the sale tickets of culls is better than a guess.");
    public static final Ask SHRUNK =
            Ask.choice("shrunk", "That weight is", "The two are 4 % apart, and the equations need to know.");
    public static final Ask WEIGHED_ON =
            Ask.date("weighedOn", "Weighed on", "For example Nov 12, 2026. For a guess: the day that it is meant for.");
    public static final Ask SCORE = Ask.number(
            "conditionScore",
            "Body condition score",
            "Mean of the group, 1 (starved) to 9 (very fat). 5: the ribs are covered, the last ones just seen.");
    public static final Ask LIGHTEST = Ask.amount(
            "lightest",
            "Most weigh from",
            Unit.POUND,
            "Nine in ten lie between the two, on the same scale. They show how far the needs of one group lie apart.");
    public static final Ask HEAVIEST = Ask.amount("heaviest", "Up to", Unit.POUND, "");
    public static final Ask THINNEST = Ask.number("thinnest", "Most score from", "Nine in ten lie between the two.");
    public static final Ask FATTEST = Ask.number("fattest", "Up to score", "");
    public static final Ask BREED =
            Ask.choice("breed", "Breed", "Decides calf weight, milk and upkeep where you have no figure.");
    public static final Ask CROSS = Ask.choice("cross", "Crossed with", "A first cross counts as the mean of the two.");
    public static final Ask WEANING = Ask.date(
            "weaning", "Calves leave them on", "Weaning of the calves above. Empty: milk is counted for 30 weeks.");
    /** Of calves themselves. */
    public static final Ask WEANED = Ask.date(
            WEANING.name(),
            "Weaned, or new here, on",
            "In the four weeks from then they eat less and need closer watching.");

    public static final Ask BIRTH = Ask.amount("calfBirthWeight", "Birth weight of their calves", Unit.POUND, "");
    public static final Ask MILK = Ask.amount(
            "peakMilk",
            "Milk at the peak",
            Unit.POUND_A_DAY,
            "Of these animals, not of a grown cow. Empty: the breed’s, 0.74 of it with a first calf, 0.88 with a second.");
    public static final Ask GAIN = Ask.amount("gain", "Gain wanted", Unit.POUND_A_DAY, "0 if they are to hold.");
    public static final Ask TURNOUT = Ask.date("turnout", "Goes to grass on", "Empty: with the rest of the ranch.");

    public static final List<Option> SCALES = List.of(
            new Option("full", "Full: feed and water in them"),
            new Option("shrunk", "Shrunk: after a night without feed and water"));

    private static final int A_YEAR = 366;

    private GroupForm() {}

    public static Ask mature(AnimalClass animals) {
        var words = "For breeding stock, at condition 5.";
        return switch (animals) {
            case MATURE_COW ->
                Ask.amount("matureWeight", "What one weighs at condition 5", Unit.POUND, "On the same scale.");
            case GROWING ->
                Ask.amount(
                        "matureWeight",
                        "What they will weigh grown up",
                        Unit.POUND,
                        "Heifers kept: as a cow at condition 5. Cattle fed out: when finished. On the same scale.");
            case BULL, BRED_HEIFER, FIRST_CALF_HEIFER ->
                Ask.amount("matureWeight", "What they will weigh grown up", Unit.POUND, words + " On the same scale.");
        };
    }

    public static boolean calves(AnimalClass animals) {
        return animals != AnimalClass.BULL && animals != AnimalClass.GROWING;
    }

    /** May have been weaned lately. */
    public static boolean isYoung(AnimalClass animals) {
        return animals == AnimalClass.GROWING;
    }

    /** Grown cows are fed to hold. */
    public static boolean gains(AnimalClass animals) {
        return animals != AnimalClass.MATURE_COW;
    }

    /** @param now the group's breed, which may be a cross of three from a file */
    static List<Option> breeds(String now) {
        var breeds = new ArrayList<Option>();
        Breed.all().stream()
                .filter(breed -> breed != Breed.AVERAGE)
                .forEach(breed -> breeds.add(new Option(breed.name(), breed.name())));
        if (breeds.stream().noneMatch(option -> option.value().equals(now)) && !now.isEmpty()) {
            breeds.add(new Option(now, now));
        }
        return breeds;
    }

    static Map<String, String> known(Group group) {
        var known = new LinkedHashMap<String, String>();
        known.put(NAME.name(), group.name());
        known.put(HEAD.name(), String.valueOf(group.head()));
        known.put(WEIGHT.name(), WEIGHT.typed(group.weight()));
        known.put(SHRUNK.name(), group.shrunk() ? "shrunk" : "full");
        known.put(WEIGHED_ON.name(), Show.date(group.weighedOn()));
        known.put("matureWeight", mature(group.animals()).typed(group.matureWeight()));
        known.put(SCORE.name(), Show.significant(group.conditionScore(), 4));
        var weights = group.weights();
        known.put(LIGHTEST.name(), weights == null ? "" : LIGHTEST.typed(weights.lightest()));
        known.put(HEAVIEST.name(), weights == null ? "" : HEAVIEST.typed(weights.heaviest()));
        var scores = group.scores();
        known.put(THINNEST.name(), scores == null ? "" : Show.significant(scores.thinnest(), 4));
        known.put(FATTEST.name(), scores == null ? "" : Show.significant(scores.fattest(), 4));
        var parents = parents(group.breed());
        known.put(BREED.name(), parents.get(0));
        known.put(CROSS.name(), parents.get(1));
        CalvingForm.know(known, group.calving());
        known.put(BIRTH.name(), group.calfBirthWeight() == null ? "" : BIRTH.typed(group.calfBirthWeight()));
        known.put(MILK.name(), group.peakMilk() == null ? "" : MILK.typed(group.peakMilk()));
        known.put(WEANING.name(), group.weaning() == null ? "" : Show.date(group.weaning()));
        known.put(GAIN.name(), GAIN.typed(group.gain()));
        known.put(TURNOUT.name(), group.turnout() == null ? "" : Show.date(group.turnout()));
        return known;
    }

    /** The breed and what it is crossed with; a cross of more than two stays whole. */
    static List<String> parents(String breed) {
        var parts = breed.strip().split("\\s+[x×]\\s+");
        return parts.length == 2 ? List.of(parts[0], parts[1]) : List.of(breed.strip(), "");
    }

    /**
     * The group of a form, or nothing if anything is wrong with it or still asked about; then the form says what.
     *
     * @param before the group as it was; null for a new one
     */
    static Optional<Group> read(Form form, AnimalClass animals, UUID id, @Nullable Group before, LocalDate today) {
        var name = form.text(NAME, "What do you call them?");
        int head = form.count(HEAD, "How many are fed in this group?");
        var weight = form.quantity(WEIGHT, "What does one weigh? A good guess will do.");
        boolean shrunk = form.text(SHRUNK, "Was it taken full, or after a night without feed and water?")
                .equals("shrunk");
        var weighedOn = form.date(WEIGHED_ON, "When was that?");
        var mature = form.quantity(mature(animals), "What does one weigh at condition 5, grown up?");
        double score = form.number(SCORE, "Score a dozen of them and take the mean.");
        var weights = weights(form);
        var scores = scores(form);
        var breed = breed(form);
        List<Group.CalvingWeek> calving = calves(animals) ? CalvingForm.read(form) : List.of();
        var birth = form.maybeQuantity(BIRTH);
        var milk = form.maybeQuantity(MILK);
        var weaning = form.maybeDate(WEANING);
        var gain = gains(animals)
                ? form.quantity(GAIN, "How much are they to gain? 0 if they are to hold.")
                : before == null ? Quantity.of(0, Unit.POUND_A_DAY) : before.gain();
        var turnout = form.maybeDate(TURNOUT);
        var group = form.build(() -> new Group(
                id,
                name,
                animals,
                head,
                weight,
                shrunk,
                weighedOn,
                mature,
                score,
                breed,
                calving,
                birth,
                milk,
                weaning,
                gain,
                turnout,
                weights,
                scores,
                before == null ? List.of() : before.past()));
        if (group.isPresent()) {
            dates(form, group.get(), before, today);
            check(form, group.get(), before, today);
        }
        return form.hasProblems() ? Optional.empty() : group;
    }

    private static Group.@Nullable Weights weights(Form form) {
        var lightest = form.maybeQuantity(LIGHTEST);
        var heaviest = form.maybeQuantity(HEAVIEST);
        both(form, LIGHTEST, HEAVIEST);
        return lightest == null || heaviest == null
                ? null
                : form.part(() -> new Group.Weights(lightest, heaviest)).orElse(null);
    }

    private static Group.@Nullable Scores scores(Form form) {
        var thinnest = form.maybeNumber(THINNEST);
        var fattest = form.maybeNumber(FATTEST);
        both(form, THINNEST, FATTEST);
        return thinnest == null || fattest == null
                ? null
                : form.part(() -> new Group.Scores(thinnest, fattest)).orElse(null);
    }

    private static void both(Form form, Ask low, Ask high) {
        if (form.isEmpty(low) != form.isEmpty(high)) {
            form.refuse(
                    (form.isEmpty(low) ? low : high).name(),
                    "",
                    "a spread has two ends",
                    "Fill in this one too, or empty the other.");
        }
    }

    private static void dates(Form form, Group group, @Nullable Group before, LocalDate today) {
        var weighed = group.weighedOn();
        if (weighed.isAfter(today)) {
            form.refuse(
                    WEIGHED_ON.name(),
                    Show.date(weighed),
                    "this day has not come yet; it is " + Show.date(today),
                    "Is the year right?");
        } else if (weighed.isBefore(today.minusDays(A_YEAR))
                && (before == null || !weighed.equals(before.weighedOn()))) {
            form.doubt(WEIGHED_ON, "weighed-long-ago", "That is more than a year ago. Do they still weigh that?");
        }
        var turnout = group.turnout();
        if (turnout != null && turnout.isBefore(today) && (before == null || !turnout.equals(before.turnout()))) {
            form.doubt(TURNOUT, "turnout-past", Show.date(turnout) + " is past. Is the year right?");
        }
    }

    private static String breed(Form form) {
        var one = form.text(BREED);
        var other = form.text(CROSS);
        if (one.isEmpty() && !other.isEmpty()) {
            form.refuse(BREED.name(), "", "a cross has two breeds", "Choose the first, or take the second away.");
        }
        return other.isEmpty() || one.equals(other) ? one : one + " x " + other;
    }

    /** What is impossible is refused; what is unusual is asked about, unless it stood there before. */
    private static void check(Form form, Group group, @Nullable Group before, LocalDate today) {
        var known = before == null ? List.<Note>of() : HerdCheck.of(before, today);
        for (var note : HerdCheck.of(group, today)) {
            switch (note.level()) {
                case REFUSE -> form.refuse(note.field(), "", note.words(), note.fix());
                case ASK -> {
                    if (!known.contains(note)) {
                        form.doubt(Ask.choice(note.field(), "", ""), note.rule(), sentence(note));
                    }
                }
                case SAY -> {
                    // stands beside the group afterwards
                }
            }
        }
    }

    static String sentence(Note note) {
        return note.words() + ". " + note.fix() + (note.fix().endsWith("?") ? "" : ".");
    }
}
