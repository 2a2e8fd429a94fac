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
import haywright.season.given.Facts;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The three forms of what holds for a whole ranch. */
public final class SettingsForms {
    public static final Ask NAME = Ask.text("name", "Ranch name", "");
    public static final Ask ADVISER = Ask.text("adviser", "Adviser", "Signs the feed letters.");
    public static final Ask TURNOUT = Ask.date(
            "turnout",
            "Turnout date",
            "When grass should carry the cows: May 15. Without a year it is the next to come.");
    public static final Ask FEEDING_LOSS = new Ask(
            "feedingLossPercent",
            "Lost in feeding",
            Unit.PERCENT,
            "Share of hay put out that is trampled or left. More when rolled out than in a" + " ring or bunk.",
            5);
    public static final Ask FIND_PRICE = Ask.amount(
            "findPrice",
            "Hay still to find, price per {ton}",
            Unit.DOLLAR_PER_TON,
            "Delivered. Empty counts as {usd_per_ton:%s} a {ton}, or half as much again as your dearest hay if that is more."
                    .formatted(Facts.value("emergency_price")));
    public static final Ask SYSTEM =
            Ask.choice("system", "Figure needs by", "Two published editions; the workings name the one used.");

    public static final Fields<Outfit> OUTFIT = Fields.of(Outfit.class)
            .section(
                    "",
                    Field.choice(
                                    "mixer",
                                    "Is there a mixer wagon?",
                                    "Only a mixer dilutes feed high in nitrate. Counted as none until you enter it.",
                                    List.of(
                                            new Option("yes", Mixing.MIXES.words()),
                                            new Option("no", Mixing.NO_MIXER.words()),
                                            new Option("", Mixing.NOT_SAID.words())))
                            .needed(""),
                    Field.amount("mixerHolds", "One load holds", Unit.POUND, "As fed."),
                    Field.tick("scale", "The wagon has a scale", ""),
                    Field.tick("processor", "Bales can be chopped", ""),
                    Field.amount("bunk", "Feed bunk", Unit.FOOT, "Total length cattle can eat from."),
                    Field.count("timesADay", "Feedings per day", "").needed("Enter 1 if not known."),
                    Field.amount(
                            "handling",
                            "Handling per {ton} fed",
                            Unit.DOLLAR_PER_TON,
                            "Loading, hauling, fuel and time. Empty counts as nothing."));

    public static final Fields<LastWinter> LAST_WINTER = Fields.of(LastWinter.class)
            .section(
                    "",
                    Field.count("head", "Head fed", ""),
                    Field.count("days", "Days fed", ""),
                    Field.amount("fed", "All feed fed, as hay", Unit.TON, "As fed. {1 ton}"),
                    Field.number("scoreBefore", "Condition in fall", "Average of the cows, 1 to 9."),
                    Field.number("scoreAfter", "Condition in spring", "Average of the cows, 1 to 9."));

    private SettingsForms() {}

    static Map<String, String> known(Ranch ranch) {
        var settings = ranch.settings();
        var known = new LinkedHashMap<String, String>();
        known.put(NAME.name(), ranch.name());
        known.put(ADVISER.name(), settings.adviser());
        known.put(TURNOUT.name(), settings.turnout() == null ? "" : Show.date(settings.turnout()));
        known.put(FEEDING_LOSS.name(), Show.significant(settings.feedingLossPercent(), 6));
        known.put(FIND_PRICE.name(), settings.findPrice() == null ? "" : FIND_PRICE.typed(settings.findPrice()));
        known.put(SYSTEM.name(), Form.id(settings.system()));
        return known;
    }

    /** The ranch with its name and settings changed. */
    static Optional<Ranch> read(Form form, Ranch ranch, LocalDate today) {
        var name = form.name(NAME, "Enter a name.");
        var adviser = form.text(ADVISER);
        var turnout = form.maybeDate(TURNOUT, today);
        if (turnout != null
                && turnout.isBefore(today)
                && !turnout.equals(ranch.settings().turnout())) {
            form.doubt(TURNOUT, "turnout-past", Show.date(turnout) + " is past. Is the year right?");
        }
        double loss = form.number(FEEDING_LOSS, "15 if not known.");
        var findPrice = form.maybeQuantity(FIND_PRICE);
        var system = form.choice(SYSTEM, RequirementSystem.class, "Choose an edition.");
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
                        was.herdFactor(),
                        was.preset(),
                        findPrice)));
    }
}
