package haywright.cattle.cold;

import static haywright.quantity.Unit.MEGACALORIE;

import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Growth;
import haywright.cattle.Maintenance;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import java.util.List;

/**
 * The heat balance, on a ration that carries the need.
 * <pre>
 * NEmc = 0.576·MEc      Mcal a day
 * </pre>
 * The ration brings MEI = (NEmm + NEmy + NEml)/0.576 + NEg/0.2958, for hay of 2.0 Mcal ME/kg; of the ME for the calf 13 %
 * is kept. A better ration warms a little less. Behind a windbreak three tenths of the wind reach the cattle.
 */
record ColdByBalance(Animal animal, Exposure exposure) implements Cold {
    private static final double KM = 0.576;
    private static final double KG = 0.2958;
    private static final double KEPT_BY_CALF = 0.13;
    private static final Source EFFICIENCY = Source.read("NRC 1996/2000 p. 43: km at ME 2.0");

    HeatBalance balance() {
        var pregnancy = animal.pregnancy();
        var lactation = animal.lactation();
        double milk = lactation == null ? 0 : lactation.nem();
        double gain = animal.gain() > 0 ? Growth.of(animal).neg() : 0;
        double maintained = new Maintenance(animal).nem() + (pregnancy == null ? 0 : pregnancy.nem()) + milk;
        return new HeatBalance(
                animal.weight().shrunk(),
                animal.conditionScore(),
                animal.animals() != AnimalClass.GROWING,
                exposure.coat(animal).hair(),
                exposure.wind() * exposure.reaching(),
                exposure.hide().left(),
                exposure.temperature(),
                maintained / KM + gain / KG,
                gain + milk + (pregnancy == null ? 0 : KEPT_BY_CALF * pregnancy.metabolizableEnergy()));
    }

    @Override
    public double nem() {
        return KM * balance().carried();
    }

    @Override
    public List<Line> lines() {
        var balance = balance();
        return List.of(Line.of(
                "NEmc",
                "0.576·MEc",
                nem(),
                MEGACALORIE,
                EFFICIENCY,
                Input.computed("MEc", balance.carried(), MEGACALORIE, balance)));
    }
}
