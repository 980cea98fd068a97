namespace Laygate.Reporting.Cards;

/// <summary>Style sheet of the cards.</summary>
internal static class CardStyles
{
    /// <summary>Black on white; a card on a screen looks as it prints, on a telephone it takes the width that there is, and wide tables stand as lines.</summary>
    public const string Cards = """
        :root{color-scheme:light}
        *{box-sizing:border-box}
        body{margin:0;color:#000;background:#fff;font:10.5pt/1.2 system-ui,"Segoe UI",Roboto,"Noto Sans","DejaVu Sans Condensed","DejaVu Sans",sans-serif}
        h1{font-size:14pt;margin:4mm;flex-basis:100%}
        main{display:flex;flex-wrap:wrap;gap:6mm;padding:4mm}
        .card{width:148mm;height:210mm;padding:6mm;border:1px solid #000;display:flex;flex-direction:column;overflow:hidden}
        h2{font-size:17pt;line-height:1.1;margin:0;border-bottom:2.5pt solid #000;padding-bottom:1mm}
        .side{font-size:11pt;font-weight:normal;float:right;padding-top:1.5mm}
        .meta,footer{font-size:8.5pt;line-height:1.2;margin:1mm 0 0}
        .draft{margin:1mm 0 0;border:2pt solid #000;text-align:center;font-weight:bold;font-size:13pt}
        .parts{flex:1;min-height:0}
        footer{border-top:1pt solid #000;padding-top:1mm}
        h3{font-size:12pt;line-height:1.2;margin:2.2mm 0 .5mm}
        ul{margin:0;padding-left:4.5mm}
        li{margin:0 0 1.5pt}
        .large{font-size:13pt;line-height:1.22}
        p{margin:.8mm 0;font-size:9.5pt}
        table{border-collapse:collapse;width:100%;font-size:10pt;line-height:1.15;font-variant-numeric:tabular-nums}
        th,td{text-align:left;vertical-align:top;border:.6pt solid #000;padding:.4mm .7mm;font-weight:normal;overflow-wrap:break-word}
        thead th,tbody th{font-weight:bold}
        .pair{display:flex;gap:3mm;align-items:flex-start}
        .pair table{flex:1}
        .pair th,.pair td{padding:.4mm .5mm}
        .pair tbody th{font-weight:normal}
        .strips{display:block;width:100%;height:auto;font-family:inherit}
        .dense{font-size:9.5pt}
        .dense table{font-size:9pt}
        .dense .large{font-size:12pt}
        @media screen and (max-width:160mm){
        main{display:block;padding:0}
        .card{width:auto;height:auto;overflow:visible;border-width:0 0 2px;padding:4mm}
        .parts section{overflow-x:auto}
        body{font-size:12pt}
        .pair{display:block}
        .pair table{table-layout:fixed}
        .pair table+table thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
        .stacks,.stacks tbody,.stacks tr,.stacks th,.stacks td{display:block;border:0;padding:0}
        .stacks thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
        .stacks tr{border-top:.6pt solid #000;padding:1mm 0}
        .stacks td::before{content:attr(data-head)": "}
        }
        @page{size:A5 portrait;margin:0}
        @media print{h1{display:none}main{display:block;padding:0}.card{border:0;break-after:page}.card:last-child{break-after:auto}}
        """;
}
