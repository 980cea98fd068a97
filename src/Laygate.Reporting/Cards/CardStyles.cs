namespace Laygate.Reporting.Cards;

/// <summary>Style sheet of the cards.</summary>
internal static class CardStyles
{
    /// <summary>Black on white; a card on a screen looks as it prints, on a telephone it takes the width that there is.</summary>
    public const string Cards = """
        :root{color-scheme:light}
        *{box-sizing:border-box}
        body{margin:0;color:#000;background:#fff;font:14pt/1.25 system-ui,"Segoe UI",Roboto,"Noto Sans","DejaVu Sans Condensed","DejaVu Sans",sans-serif}
        h1{font-size:14pt;margin:4mm}
        main{display:flex;flex-wrap:wrap;gap:6mm;padding:4mm}
        h1{flex-basis:100%}
        .card{width:148mm;height:210mm;padding:7mm 8mm;border:1px solid #000;display:flex;flex-direction:column;overflow:hidden}
        h2{font-size:19pt;line-height:1.1;margin:0;border-bottom:3pt solid #000;padding-bottom:1mm}
        .side{font-size:11pt;font-weight:normal;float:right;padding-top:2mm}
        .meta,footer{font-size:9pt;line-height:1.25;margin:1mm 0 0}
        .draft{margin:1mm 0 0;border:2pt solid #000;text-align:center;font-weight:bold;font-size:14pt}
        .parts{flex:1;min-height:0}
        footer{border-top:1pt solid #000;padding-top:1mm}
        h3{font-size:13pt;margin:3mm 0 .8mm}
        ul{margin:0;padding-left:5mm}
        li{margin:0 0 2pt}
        p{margin:1mm 0;font-size:10pt}
        table{border-collapse:collapse;width:100%;font-size:11pt;line-height:1.2;font-variant-numeric:tabular-nums}
        th,td{text-align:left;vertical-align:top;border:.6pt solid #000;padding:.6mm .6mm;font-weight:normal;overflow-wrap:break-word}
        thead th{font-weight:bold}
        tbody th{font-weight:bold}
        .strips{display:block;width:100%;height:auto;max-height:34mm;font-family:inherit}
        @media screen and (max-width:160mm){.parts section{overflow-x:auto}main{display:block;padding:0}.card{width:auto;height:auto;overflow:visible;border-width:0 0 2px;padding:4mm}}
        @page{size:A5 portrait;margin:0}
        @media print{h1{display:none}main{display:block;padding:0}.card{border:0;break-after:page}}
        """;
}
