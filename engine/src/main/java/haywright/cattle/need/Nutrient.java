package haywright.cattle.need;

/** What cattle need as a share of all they eat: the minerals beside calcium and phosphorus, and vitamins. */
public enum Nutrient {
    MAGNESIUM("Mg", "magnesium"),
    POTASSIUM("K", "potassium"),
    SODIUM("Na", "sodium"),
    SULFUR("S", "sulfur"),
    COPPER("Cu", "copper"),
    ZINC("Zn", "zinc"),
    MANGANESE("Mn", "manganese"),
    SELENIUM("Se", "selenium"),
    IRON("Fe", "iron"),
    COBALT("Co", "cobalt"),
    IODINE("I", "iodine"),
    VITAMIN_A("A", "vitamin A"),
    VITAMIN_D("D", "vitamin D");

    private final String symbol;
    private final String words;

    Nutrient(String symbol, String words) {
        this.symbol = symbol;
        this.words = words;
    }

    public String symbol() {
        return symbol;
    }

    public String words() {
        return words;
    }
}
