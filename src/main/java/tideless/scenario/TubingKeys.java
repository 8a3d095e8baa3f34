package tideless.scenario;

import static tideless.scenario.Key.ASSUMED;
import static tideless.scenario.Key.COMMON_PRACTICE;
import static tideless.scenario.UnitTable.LENGTH;

import java.util.List;

/** A run of tube. Its one usual fitting depends on where it begins. */
final class TubingKeys {
    /** From a reservoir to the first tee. */
    static final TubingKeys TRUNK = new TubingKeys(Fitting.ENTRANCE);

    /** From a tee to a valve. */
    static final TubingKeys BRANCH = new TubingKeys(Fitting.TEE_BRANCH);

    final KeyGroup keys = new KeyGroup();
    final Fitting usual;
    final Key<Double> bore =
            keys.add(
                    Key.quantity("bore", LENGTH)
                            .from("0.5 mm", "100 mm")
                            .fallsTo("8 mm", COMMON_PRACTICE)
                            .about("inside diameter"));
    final Key<Double> length =
            keys.add(
                    Key.quantity("length", LENGTH)
                            .from("0 m", "500 m")
                            .fallsTo("1 m", ASSUMED)
                            .about("length; 0 m for no tube"));
    final Key<List<Fitting>> fittings;
    final Key<Double> loss;

    private TubingKeys(Fitting usual) {
        this.usual = usual;
        fittings =
                keys.add(
                        Key.names("fittings", Spellings.of(Fitting.values(), Fitting::spelling))
                                .workedOut(
                                        "one " + usual.spelling(),
                                        "[\"" + usual.spelling() + "\", \"elbow\"]")
                                .about("what the flow passes, each as often as it is there"));
        loss =
                keys.add(
                        Key.number("loss")
                                .from("0", "1000")
                                .workedOut("the sum over the fittings", "2.5")
                                .about("sum of loss coefficients on the tube's velocity, instead"));
    }
}
