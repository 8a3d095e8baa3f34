package tideless.report;

import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorConvertOp;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import tideless.study.Forecast;

/**
 * Writes a made-up forecast's files, for a look at them: a folder, then "three", "many", "long" or
 * "short", then "grey" for grey copies of the pictures as well.
 */
final class DrawPictures {
    private DrawPictures() {}

    public static void main(String[] args) throws Exception {
        Path folder = Path.of(args[0]);
        Forecast forecast =
                switch (args[1]) {
                    case "many" ->
                            MadeUpForecast.of(
                                    70,
                                    "North",
                                    "South",
                                    "Basil",
                                    "Chard",
                                    "Mint",
                                    "Pepper",
                                    "A tray with a very long name by the window");
                    case "long" -> MadeUpForecast.of(400, "Lettuce", "Basil", "Tomato");
                    case "short" -> MadeUpForecast.of(9, "Lettuce", "Basil", "Tomato");
                    default -> MadeUpForecast.threeTrays();
                };
        long before = System.nanoTime();
        WriteResult result = ResultFiles.write(forecast, folder, true);
        System.out.printf(
                "%d ms, %s%n", (System.nanoTime() - before) / 1_000_000, result.problem());
        if (args.length > 2) {
            for (Path file : result.files()) {
                if (file.toString().endsWith(".png")) {
                    BufferedImage colour = ImageIO.read(file.toFile());
                    BufferedImage grey =
                            new ColorConvertOp(ColorSpace.getInstance(ColorSpace.CS_GRAY), null)
                                    .filter(colour, null);
                    ImageIO.write(grey, "png", Path.of(file + ".grey.png").toFile());
                }
            }
        }
    }
}
