package haywright.app.web.ranch;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.form.Field;
import haywright.app.web.form.Fields;
import haywright.app.words.Show;
import haywright.cattle.RequirementSystem;
import haywright.diet.Mixing;
import haywright.quantity.Unit;
import haywright.ranch.LastWinter;
import haywright.ranch.Outfit;
import haywright.ranch.Ranch;
import haywright.ranch.Settings;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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

    public static final Fields<Outfit> OUTFIT = Fields.of(Outfit.class)
            .section(
                    "",
                    Field.choice(
                                    "mixer",
                                    "Is there a mixer wagon?",
                                    "Only a mixer dilutes a feed that is high in nitrate. Not said counts as none.",
                                    List.of(
                                            new Option("yes", Mixing.MIXES.words()),
                                            new Option("no", Mixing.NO_MIXER.words()),
                                            new Option("", Mixing.NOT_SAID.words())))
                            .needed(""),
                    Field.amount("mixerHolds", "One load holds", Unit.POUND, "As fed."),
                    Field.tick("scale", "The wagon has a scale", ""),
                    Field.tick("processor", "Bales can be chopped", ""),
                    Field.amount("bunk", "Feed bunk", Unit.FOOT, "The whole length that cattle can stand at."),
                    Field.count("timesADay", "Times feed goes out in a day", "")
                            .needed("Enter 1 if nothing else is known."),
                    Field.amount(
                            "handling",
                            "Handling of a ton put out",
                            Unit.DOLLAR_PER_TON,
                            "Loading, hauling, fuel and time. Empty counts as nothing."));

    public static final Fields<LastWinter> LAST_WINTER = Fields.of(LastWinter.class)
            .section(
                    "",
                    Field.count("head", "Head fed", ""),
                    Field.count("days", "Days fed", ""),
                    Field.amount("fed", "Everything fed, as hay", Unit.TON, "As fed. 1 ton is 2,000 lb."),
                    Field.number("scoreBefore", "Condition in fall", "Mean of the cows, on the scale of 1 to 9."),
                    Field.number("scoreAfter", "Condition in spring", "The same."));

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
    static Optional<Ranch> read(Form form, Ranch ranch, LocalDate today) {
        var name = form.text(NAME, "What is it called?");
        var adviser = form.text(ADVISER);
        var turnout = form.maybeDate(TURNOUT);
        if (turnout != null
                && turnout.isBefore(today)
                && !turnout.equals(ranch.settings().turnout())) {
            form.doubt(TURNOUT, "turnout-past", Show.date(turnout) + " is past. Is the year right?");
        }
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
}
