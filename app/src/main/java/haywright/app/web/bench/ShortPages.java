package haywright.app.web.bench;

import haywright.app.report.picture.HayLinePicture;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.ShortRationWords;
import haywright.app.words.ShortWords;
import haywright.app.words.Show;
import haywright.feeding.Rations;
import haywright.feeding.hay.HayStep;
import haywright.feeding.hay.HayStep.What;
import haywright.feeding.hay.ShortOfHay;
import haywright.feeding.hay.ShortOfHay.Asked;
import haywright.feeding.hay.ShortOfHay.Lacks;
import haywright.quantity.Unit;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Short of hay: tons, the day it is gone, and what to do in which order. What is asked stays in the address. */
public final class ShortPages {
    static final Ask SOLD = Ask.number("sold", "Open, old and late cows you would sell", "");
    static final Ask DOLLARS_SOLD = Ask.amount("dollarsSold", "What one brings", Unit.DOLLAR, "");
    static final Ask AWAY = Ask.number("away", "Dry cows that could go to stalks or a custom feeder", "");
    static final Ask AWAY_DAYS = Ask.number("awayDays", "For how many days", "30 if you leave it empty.");
    static final Ask DOLLARS_AWAY = Ask.amount("dollarsAway", "Cost per head per day there", Unit.DOLLAR, "");

    private static final List<Ask> ASKS = List.of(SOLD, DOLLARS_SOLD, AWAY, AWAY_DAYS, DOLLARS_AWAY);

    /** Of the address: steps that are left out. */
    private static final String NOT = "not";

    private ShortPages() {}

    static void routes(Routes on) {
        on.get("bench/short", ShortPages::show);
    }

    /**
     * @param hay null where something is lacking, or what was asked is wrong
     * @param problems why it cannot be worked out
     */
    public record View(
            Form form,
            List<Lacks> lacks,
            @Nullable ShortOfHay hay,
            List<Group> groups,
            List<Problem> problems,
            Set<What> not) {
        public List<Ask> asks() {
            return ASKS;
        }

        public HayLinePicture picture() {
            var short_ = Objects.requireNonNull(hay);
            double bought = short_.tonsBought();
            double left = short_.tonsOnHand() + bought - short_.tonsTakenAtLast();
            return new HayLinePicture(
                    "hay",
                    short_.today(),
                    short_.grass(),
                    short_.tonsOnHand(),
                    bought,
                    short_.gone(),
                    short_.tonsShortAtLast() == 0 ? Math.max(0, left) : left);
        }

        /** What there is to do, to ask or to enter: none that would save nothing here. */
        public List<HayStep> steps() {
            return Objects.requireNonNull(hay).steps().stream()
                    .filter(step -> step.saves() > 0
                            || isLeftOut(step)
                            || step.what() == What.TEST
                            || step.what() == What.BUY_HAY
                            || step.before() > 0 && step.head() == 0 && ShortWords.isAsked(step))
                    .toList();
        }

        public boolean isLeftOut(HayStep step) {
            return not.contains(step.what());
        }

        /** Whether it can be left out: that they are fed more than they need now is no choice. */
        public boolean isChoice(HayStep step) {
            return step.what() != What.TEST
                    && step.what() != What.FEED_TO_NEED
                    && step.what() != What.BUY_HAY
                    && (isLeftOut(step) || step.saves() > 0);
        }

        /** The box at the end of the page that a step waits for; null for most. */
        public @Nullable String box(HayStep step) {
            return step.what() == What.SELL_OPEN ? SOLD.name() : step.what() == What.ELSEWHERE ? AWAY.name() : null;
        }

        /** Of this page with a step left out, or taken again. */
        public String without(HayStep step) {
            var other = EnumSet.noneOf(What.class);
            other.addAll(not);
            if (!other.remove(step.what())) {
                other.add(step.what());
            }
            var query = new ArrayList<String>();
            for (var ask : ASKS) {
                if (!form.isEmpty(ask)) {
                    query.add(ask.name() + "=" + URLEncoder.encode(form.value(ask), StandardCharsets.UTF_8));
                }
            }
            other.forEach(what -> query.add(NOT + "=" + Form.id(what)));
            return query.isEmpty() ? "?" : "?" + String.join("&", query);
        }
    }

    /** @param unmet empty where all is met */
    public record Group(String name, String head, List<Line> lines, String unmet) {}

    /** @param beside what comes with the ration */
    public record Line(String when, String head, String ration, List<String> beside) {}

    /** For the list of groups: empty where hay lasts, something is lacking, or it cannot be worked out. */
    static Optional<String> headline(Rations rations) {
        try {
            return ShortOfHay.of(rations, Asked.NOTHING)
                    .filter(ShortOfHay::isShort)
                    .map(ShortWords::headline);
        } catch (Refused refused) {
            return Optional.empty(); // each group’s own line says why
        }
    }

    private static void show(Page page) {
        var typed = new LinkedHashMap<String, String>();
        for (var ask : ASKS) {
            typed.put(ask.name(), Objects.requireNonNullElse(page.http().queryParam(ask.name()), ""));
        }
        var form = Form.of("bench/short", typed);
        var not = not(page);
        var asked = form.build(() -> new Asked(
                form.maybeCount(SOLD),
                form.maybeNumber(DOLLARS_SOLD),
                form.maybeCount(AWAY),
                form.maybeCount(AWAY_DAYS),
                form.maybeNumber(DOLLARS_AWAY),
                not));
        var rations = page.rations();
        var view = new View(form, List.of(), null, List.of(), List.of(), not);
        try {
            var lacks = ShortOfHay.lacks(rations.yard());
            view = new View(form, lacks, null, List.of(), List.of(), not);
            if (asked.isPresent() && lacks.isEmpty()) {
                var hay = ShortOfHay.of(rations, asked.get()).orElseThrow();
                view = new View(form, lacks, hay, groups(hay), List.of(), not);
            }
        } catch (Refused refused) {
            view = new View(form, List.of(), null, List.of(), refused.problems(), not);
        }
        page.http().status(form.hasProblems() ? 422 : 200);
        page.show("haywright/app/web/bench/short.jte", view);
    }

    private static Set<What> not(Page page) {
        var named = page.http().queryParams(NOT);
        return Arrays.stream(What.values())
                .filter(what -> named.contains(Form.id(what)))
                .collect(Collectors.toUnmodifiableSet());
    }

    private static List<Group> groups(ShortOfHay hay) {
        return hay.isShort()
                ? hay.leastHarm().stream()
                        .map(least -> new Group(
                                least.group().name(),
                                Show.number(least.head(), 0),
                                least.rows().stream()
                                        .map(row -> new Line(
                                                ShortRationWords.when(least.group(), row),
                                                Show.number(row.head(), 0),
                                                ShortRationWords.fed(row),
                                                ShortRationWords.beside(row, hay.ranch())))
                                        .toList(),
                                ShortRationWords.unmet(least)))
                        .toList()
                : List.of();
    }
}
