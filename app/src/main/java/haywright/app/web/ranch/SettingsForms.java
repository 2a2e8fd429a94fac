package haywright.app.web.ranch;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.words.Show;
import haywright.cattle.RequirementSystem;
import haywright.diet.Mixing;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.LastWinter;
import haywright.ranch.Outfit;
import haywright.ranch.Ranch;
import haywright.ranch.Settings;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The three forms of what holds for a whole ranch. */
public final class SettingsForms {
    public static final Ask NAME = Ask.text("name", "What the ranch is called", "");
    public static final Ask ADVISER = Ask.text("adviser", "Adviser", "Signs the feed letters.");
    public static final Ask TURNOUT =
            Ask.date("turnout", "Day grass is expected to carry the cows", "For example May 15, 2027.");
    public static final Ask FEEDING_LOSS = new Ask(
            "feedingLossPercent",
            "Lost in feeding",
            Unit.PERCENT,
            "Of what is put out, the share that is trampled or left. Hay rolled out on the ground loses more than hay in a"
                    + " ring or bunk.",
            5);
    public static final Ask SYSTEM = Ask.choice(
            "system",
            "Needs are worked out by",
            "The two published editions differ; the choice is named in every workings.");

    public static final Ask MIXER = Ask.choice(
            "mixer",
            "Is there a mixer wagon?",
            "Only a mixer dilutes a feed that is high in nitrate. Not said counts as none.");
    public static final Ask MIXER_HOLDS = Ask.amount("mixerHolds", "One load holds", Unit.POUND, "As fed.");
    public static final Ask PROCESSOR = Ask.choice("processor", "Bales can be chopped", "");
    public static final Ask SCALE = Ask.choice("scale", "The wagon weighs", "");
    public static final Ask BUNK =
            Ask.amount("bunk", "Feed bunk", Unit.FOOT, "The whole length that cattle can stand at.");
    public static final Ask TIMES_A_DAY = Ask.number("timesADay", "Times feed goes out in a day", "");

    public static final Ask HEAD = Ask.number("head", "Head fed", "");
    public static final Ask DAYS = Ask.number("days", "Days fed", "");
    public static final Ask FED = Ask.amount("fed", "Everything fed, as hay", Unit.TON, "As fed. 1 ton is 2,000 lb.");
    public static final Ask SCORE_BEFORE =
            Ask.number("scoreBefore", "Condition in autumn", "Mean of the cows, on the scale of 1 to 9.");
    public static final Ask SCORE_AFTER = Ask.number("scoreAfter", "Condition in spring", "The same.");

    private SettingsForms() {}

    static Map<String, String> known(Ranch ranch) {
        var settings = ranch.settings();
        var known = new LinkedHashMap<String, String>();
        known.put(NAME.name(), ranch.name());
        known.put(ADVISER.name(), settings.adviser());
        known.put(TURNOUT.name(), settings.turnout() == null ? "" : Show.date(settings.turnout()));
        known.put(FEEDING_LOSS.name(), Show.significant(settings.feedingLossPercent(), 6));
        known.put(SYSTEM.name(), Form.id(settings.system()));
        return known;
    }

    /** The ranch with its name and settings changed. */
    static Optional<Ranch> read(Form form, Ranch ranch) {
        var name = form.text(NAME, "What is it called?");
        var adviser = form.text(ADVISER);
        var turnout = form.maybeDate(TURNOUT);
        double loss = form.number(FEEDING_LOSS, "15 if nothing better is known.");
        var system = form.choice(SYSTEM, RequirementSystem.class, "Which edition?");
        var was = ranch.settings();
        return form.build(() -> ranch.withName(name)
                .with(new Settings(
                        was.invented(),
                        was.fixedToday(),
                        system,
                        adviser,
                        loss,
                        turnout,
                        was.weather(),
                        was.herdFactor())));
    }

    public static List<Option> mixings() {
        return Option.of(Mixing.class, Mixing::words);
    }

    static Map<String, String> known(Outfit outfit) {
        var known = new LinkedHashMap<String, String>();
        known.put(MIXER.name(), Form.id(outfit.mixing()));
        known.put(MIXER_HOLDS.name(), typed(MIXER_HOLDS, outfit.mixerHolds()));
        known.put(PROCESSOR.name(), outfit.processor() ? "yes" : "");
        known.put(SCALE.name(), outfit.scale() ? "yes" : "");
        known.put(BUNK.name(), typed(BUNK, outfit.bunk()));
        known.put(TIMES_A_DAY.name(), Integer.toString(outfit.timesADay()));
        return known;
    }

    static Optional<Outfit> outfit(Form form) {
        var mixing = form.value(MIXER).isEmpty()
                ? Mixing.NOT_SAID
                : form.choice(MIXER, Mixing.class, "Is there a mixer wagon?");
        var mixer = mixing == null || mixing == Mixing.NOT_SAID ? null : (Boolean) mixing.mixes();
        var holds = form.maybeQuantity(MIXER_HOLDS);
        boolean processor = form.isTicked(PROCESSOR);
        boolean scale = form.isTicked(SCALE);
        var bunk = form.maybeQuantity(BUNK);
        int times = form.count(TIMES_A_DAY, "Once, if nothing else is known.");
        return form.build(() -> new Outfit(mixer, holds, processor, scale, bunk, times));
    }

    static Map<String, String> known(LastWinter winter) {
        var known = new LinkedHashMap<String, String>();
        known.put(HEAD.name(), winter.head() == null ? "" : Show.number(winter.head(), 0));
        known.put(DAYS.name(), winter.days() == null ? "" : winter.days().toString());
        known.put(FED.name(), typed(FED, winter.fed()));
        known.put(SCORE_BEFORE.name(), score(winter.scoreBefore()));
        known.put(SCORE_AFTER.name(), score(winter.scoreAfter()));
        return known;
    }

    static Optional<LastWinter> lastWinter(Form form) {
        var head = form.maybeCount(HEAD);
        var days = form.maybeCount(DAYS);
        var fed = form.maybeQuantity(FED);
        var before = form.maybeNumber(SCORE_BEFORE);
        var after = form.maybeNumber(SCORE_AFTER);
        return form.build(() -> new LastWinter(head, days, fed, before, after));
    }

    private static String typed(Ask ask, @Nullable Quantity quantity) {
        return quantity == null ? "" : ask.typed(quantity);
    }

    private static String score(@Nullable Double score) {
        return score == null ? "" : Show.significant(score, 3);
    }
}
