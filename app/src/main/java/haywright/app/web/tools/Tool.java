package haywright.app.web.tools;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.forage.NutrientPrice;
import haywright.forage.Substitution;
import haywright.forage.WasteCost;
import haywright.quantity.Unit;
import haywright.ration.PearsonSquare;
import haywright.workings.Worked;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;

/**
 * One small question.
 *
 * @param id in the address; the topic of the command has the same name
 * @param example what stands in its boxes until somebody types: a published worked example
 * @param source of the example
 */
record Tool(
        String id,
        String title,
        String about,
        List<Ask> asks,
        Map<String, String> example,
        String source,
        BiFunction<Tool, Form, Optional<Answer>> works) {
    /** In the words of the ranch whose page it is on. */
    @Override
    public String about() {
        return Measures.say(about);
    }

    /** As it was published, with its unit where the box asks for another. */
    @Override
    public Map<String, String> example() {
        var typed = new LinkedHashMap<>(example);
        for (var ask : asks) {
            if (ask.unit() != ask.us()) {
                typed.computeIfPresent(
                        ask.name(), (name, value) -> value + " " + ask.us().symbol());
            }
        }
        return typed;
    }

    /** @param says a sentence each, the answer first */
    record Answer(List<String> says, List<Worked> workings) {}

    static final List<Tool> ALL = List.of(
            new Tool(
                    "pearson-square",
                    "Mix two feeds",
                    "How much of each of two feeds hits a target, such as protein. All on one basis.",
                    List.of(
                            percent("target", "Wanted in the mix, %"),
                            percent("a", "In the first feed, %"),
                            percent("b", "In the second feed, %"),
                            Ask.amount("batch", "How much to mix", Unit.POUND, "")),
                    Map.of("target", "18", "a", "44.4", "b", "8.9", "batch", "2000"),
                    "Soybean meal and corn to 18 %, as published: rounded there to 800 and 1,200 lb.",
                    Tool::square),
            new Tool(
                    "feed-price",
                    "What a feed really costs",
                    "Dollars a {ton} of dry matter, a pound of protein and a pound of TDN.",
                    List.of(
                            Ask.amount("price", "Price as fed, delivered", Unit.DOLLAR_PER_TON, ""),
                            percent("dm", "Dry matter, %"),
                            percent("cp", "Protein, % of dry matter"),
                            percent("tdn", "TDN, % of dry matter")),
                    Map.of("price", "180", "dm", "90", "cp", "12", "tdn", "75"),
                    "",
                    Tool::price),
            new Tool(
                    "break-even-hay",
                    "Hay against grain",
                    "The price of hay at which its TDN costs as much as in a grain.",
                    List.of(
                            Ask.amount("grain", "Grain, price as fed", Unit.DOLLAR_PER_TON, ""),
                            percent("grainDm", "Grain, dry matter, %"),
                            percent("grainTdn", "Grain, TDN, % of dry matter"),
                            percent("hayDm", "Hay, dry matter, %"),
                            percent("hayTdn", "Hay, TDN, % of dry matter")),
                    Map.of("grain", "135.42", "grainDm", "88.5", "grainTdn", "83.1", "hayDm", "87.4", "hayTdn", "57.6"),
                    "Barley at $3.25 for 48 lb against hay: Manitoba Agriculture, What is the value of hay this year.",
                    Tool::breakEven),
            new Tool(
                    "waste-cost",
                    "What waste costs",
                    "What is left lying costs as much as what is eaten.",
                    List.of(
                            Ask.amount("bale", "Price of a bale", Unit.DOLLAR, ""),
                            Ask.amount("weight", "Weight of a bale", Unit.POUND, ""),
                            percent("loss", "Wasted of what is put out, %"),
                            Ask.number("bales", "Bales fed", "")),
                    Map.of("bale", "70", "weight", "1200", "loss", "20.5", "bales", "180"),
                    "An open ring, 180 bales: Wells and Lalman (Oklahoma State), Noble Ag News and Views, October 2011.",
                    Tool::waste),
            new Tool(
                    "substitution",
                    "Grain in place of hay",
                    "How many pounds of hay a pound of another feed takes the place of, by energy.",
                    List.of(
                            percent("dm", "Feed, dry matter, %"),
                            percent("tdn", "Feed, TDN, % of dry matter"),
                            percent("hayDm", "Hay, dry matter, %"),
                            percent("hayTdn", "Hay, TDN, % of dry matter")),
                    Map.of("dm", "88", "tdn", "88", "hayDm", "88", "hayTdn", "52"),
                    "Published: a pound of corn for 1.5 lb of good hay to 1.9 of poor hay (eXtension beef).",
                    Tool::substitute));

    private static Ask percent(String name, String label) {
        return Ask.amount(name, label, Unit.PERCENT, "");
    }

    private double read(Form form, int ask) {
        return form.quantity(asks.get(ask), "Enter a number.").in(asks.get(ask).unit());
    }

    static Optional<Tool> of(String id) {
        return ALL.stream().filter(tool -> tool.id.equals(id)).findFirst();
    }

    private static Optional<Answer> square(Tool tool, Form form) {
        double target = tool.read(form, 0);
        double a = tool.read(form, 1);
        double b = tool.read(form, 2);
        double batch = tool.read(form, 3);
        return form.build(() -> new PearsonSquare(target, a, b, batch))
                .map(square -> new Answer(
                        List.of(
                                "%s lb of the first feed and %s lb of the second."
                                        .formatted(
                                                Show.number(square.amountOfA(), 0), Show.number(square.amountOfB(), 0)),
                                "That is %s and %s of the mix."
                                        .formatted(Show.percent(square.shareOfA()), Show.percent(square.shareOfB()))),
                        List.of(square)));
    }

    private static Optional<Answer> price(Tool tool, Form form) {
        double price = Measures.price().toBase(tool.read(form, 0));
        double dm = tool.read(form, 1);
        double cp = tool.read(form, 2);
        double tdn = tool.read(form, 3);
        return form.build(() -> List.of(new NutrientPrice(price, dm, cp), new NutrientPrice(price, dm, tdn)))
                .map(prices -> new Answer(
                        List.of(
                                "%s of dry matter."
                                        .formatted(dollarsATon(prices.get(0).dry())),
                                "%s ¢ a pound of protein, %s ¢ a pound of TDN."
                                        .formatted(
                                                centsAPound(prices.get(0).nutrient()),
                                                centsAPound(prices.get(1).nutrient()))),
                        List.copyOf(prices)));
    }

    private static Optional<Answer> breakEven(Tool tool, Form form) {
        double grain = Measures.price().toBase(tool.read(form, 0));
        double grainDm = tool.read(form, 1);
        double grainTdn = tool.read(form, 2);
        double hayDm = tool.read(form, 3);
        double hayTdn = tool.read(form, 4);
        return form.build(() -> new Substitution(hayDm, hayTdn, grainDm, grainTdn))
                .flatMap(by -> form.build(() -> new NutrientPrice(grain, grainDm, grainTdn))
                        .map(price -> new Answer(
                                List.of(
                                        "The hay is worth %s beside this grain, by energy."
                                                .formatted(dollarsATon(grain * by.replaces())),
                                        "A pound of TDN costs %s ¢.".formatted(centsAPound(price.nutrient())),
                                        "Protein and gut fill are not in it: rations weigh them."),
                                List.of(price, by))));
    }

    private static Optional<Answer> waste(Tool tool, Form form) {
        double bale = tool.read(form, 0);
        double pounds = tool.read(form, 1);
        double loss = tool.read(form, 2);
        double dollars = bale * loss / 100;
        var bales = form.maybeNumber(tool.asks.get(3));
        return form.build(() -> new WasteCost(bale / Unit.POUND.toBase(pounds), loss))
                .map(cost -> new Answer(
                        List.of(
                                "%s of each bale is lost: %s lb.%s"
                                        .formatted(
                                                Show.dollars(dollars),
                                                Show.number(pounds * loss / 100, 0),
                                                bales == null
                                                        ? ""
                                                        : " %s bales: %s."
                                                                .formatted(
                                                                        Show.number(bales, 0),
                                                                        Show.dollars(dollars * bales))),
                                "What is eaten costs %s; bought, it was %s."
                                        .formatted(dollarsATon(cost.eaten()), ofATon(cost.price()))),
                        List.of(cost)));
    }

    private static Optional<Answer> substitute(Tool tool, Form form) {
        double dm = tool.read(form, 0);
        double tdn = tool.read(form, 1);
        double hayDm = tool.read(form, 2);
        double hayTdn = tool.read(form, 3);
        return form.build(() -> new Substitution(dm, tdn, hayDm, hayTdn))
                .map(by -> new Answer(
                        List.of(
                                "A pound takes the place of %s lb of this hay, by energy."
                                        .formatted(Show.number(by.replaces(), 1)),
                                "Step grain up over two to three weeks, never beyond the limits of their ration."),
                        List.of(by)));
    }

    private static String ofATon(double perKg) {
        return Show.dollars(Measures.price().fromBase(perKg));
    }

    private static String dollarsATon(double perKg) {
        return ofATon(perKg) + " a " + Measures.ton();
    }

    private static String centsAPound(double perKg) {
        return Show.number(100 * Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_LB, perKg), 1);
    }
}
