/* Made by tests/fixtures/systems/make-list.py from the EPSG register of PROJ: not to be changed by hand. */

/** Datums, a line each: name | codes of its geographic systems | ESRI's name of the system | of the datum where it differs | long name | words of proj4 where it is not GRS80 as it is | accuracy of the shift, metres. */
export const datumLines = `
NAD83(2011)|6318 6319|NAD_1983_2011||NAD83 (National Spatial Reference System 2011)||
NAD83|4269|North_American_1983||North American Datum 1983||
NAD83(NSRS2007)|4759 4893|NAD_1983_NSRS2007||NAD83 (National Spatial Reference System 2007)||
NAD83(HARN)|4152 4957|North_American_1983_HARN||NAD83 (High Accuracy Reference Network)||
WGS 84|4326 4979|WGS_1984||World Geodetic System 1984|+datum=WGS84|
ETRS89|4258 4937|ETRS_1989||European Terrestrial Reference System 1989||
China Geodetic Coordinate System 2000|4490 4480|China_Geodetic_Coordinate_System_2000|China_2000|||
NAD83(CSRS)|4617 4955|North_American_1983_CSRS||NAD83 Canadian Spatial Reference System||
NAD83(CORS96)|6783 6782|NAD_1983_CORS96||NAD83 (Continuously Operating Reference Station 1996)||
NZGD2000|4167 4959|NZGD_2000||New Zealand Geodetic Datum 2000||
GDA2020|7844 7843||GDA2020|Geocentric Datum of Australia 2020||
MAGNA-SIRGAS|4686 4997|MAGNA||Marco Geocentrico Nacional de Referencia||
SIRGAS 2000|4674 4989|SIRGAS_2000||Sistema de Referencia Geocentrico para las AmericaS 2000||
JGD2000|4612 4947|JGD_2000||Japanese Geodetic Datum 2000||
JGD2011|6668 6667|JGD_2011||Japanese Geodetic Datum 2011||
GDA94|4283 4939|GDA_1994||Geocentric Datum of Australia 1994||
SWEREF99|4619 4977|SWEREF99||||
TUREF|5252 5251|TUREF|Turkish_National_Reference_Frame|||
SIRGAS 1995|4170 4975|SIRGAS||Sistema de Referencia Geocentrico para America del Sur 1995||
Hartebeesthoek94|4148 4941|Hartebeesthoek_1994|||+ellps=WGS84 +towgs84=0,0,0|
RGF93 v1|4171 4965 7042 7084|RGF_1993||Reseau Geodesique Francais 1993 v1||
Korea 2000|4737 4927|Korea_2000||Geocentric datum of Korea||
RDN2008|6706 6705|RDN2008|Rete_Dinamica_Nazionale_2008|||
RGF93 v2|9777 9776 9778 9779|||Reseau Geodesique Francais 1993 v2||
RGF93 v2b|9782 9781 9783 9784|||Reseau Geodesique Francais 1993 v2b||
POSGAR 2007|5340 5342|POSGAR_2007||Posiciones Geodesicas Argentinas 2007|+ellps=WGS84 +towgs84=0,0,0|
Mexico ITRF92|4483 4482|Mexican_Datum_of_1993||||
Mexico ITRF2008|6365 6364|Mexico_ITRF2008||||
POSGAR 98|4190 4961|POSGAR_1998||Posiciones Geodesicas Argentinas 1998||
POSGAR 94|4694 4929|POSGAR_1994||Posiciones Geodesicas Argentinas 1994|+ellps=WGS84 +towgs84=0,0,0|
RT90|4124|RT_1990||Rikets koordinatsystem 1990|+ellps=bessel +towgs84=414.1,41.3,603.1,-0.855,2.141,-7.023,0|1.0
BGS2005|7798 7797||Bulgaria_Geodetic_System_2005|||
ETRF2000-PL|9702 9701|||ETRF2000 Poland||
PTRA08|5013 5012|PTRA08||Autonomous Regions of Portugal 2008||
PNG94|5546 5545|PNG94|Papua_New_Guinea_Geodetic_Datum_1994|||
Kyrg-06|7686 7685||Kyrgyz_Republic_2006|Kyrgyzstan Geodetic Datum 2006||
Yemen NGN96|4163 4981|Yemen_NGN_1996||Yemen National Geodetic Network 1996|+ellps=WGS84 +towgs84=0,0,0|
RGNC91-93|4749 4907|RGNC_1991-93|Reseau_Geodesique_de_Nouvelle_Caledonie_1991-93|Reseau Geodesique de Nouvelle Caledonie 91-93||
RGPF|4687 4999|RGPF|Reseau_Geodesique_de_la_Polynesie_Francaise|||
HTRS96|4761 4889|HTRS96|Croatian_Terrestrial_Reference_System|||
REGCAN95|4081 4080|REGCAN95|Red_Geodesica_de_Canarias_1995|||
ISN2004|5324 5323|ISN_2004|Islands_Network_2004|Islands Net 2004||
RSAO13|8699 8698||Reference_System_de_Angola_2013|||
REGVEN|4189 4963|REGVEN||Red Geodesica Venezolana||
Moznet|4130 4953|Moznet||Moznet (ITRF94)|+ellps=WGS84 +towgs84=0,0,0|
IGM95|4670 4983|IGM_1995||Istituto Geografico Militaire 1995||
Mauritania 1999|4702 4925|Mauritania_1999||||
JAD2001|4758 4895|JAD_2001|Jamaica_2001||+ellps=WGS84 +towgs84=0,0,0|
IGRS|3889 3888|IGRS|Iraqi_Geospatial_Reference_System|||
MARGEN|5354 5353|MARGEN|Marco_Geodesico_Nacional|Marco Geodesico Nacional de Bolivia||
Peru96|5373 5372|Peru96||||
ONGD14|7373 7372||Oman_National_Geodetic_Datum_2014|||
ISN2016|8086 8085||Islands_Net_2016|||
SIRGAS-Chile 2021|20041 20040|||SIRGAS-Chile realization 5 epoch 2021||
IRENET95|4173 4943|IRENET95||||
RGFG95|4624 4967 7040 7041|RGFG_1995||Reseau Geodesique Francais Guyane 1995||
RGR92|4627 4971 7036 7037|RGR_1992||Reseau Geodesique de la Reunion 1992||
Slovenia 1996|4765 4883|Slovenia_1996|Slovenia_Geodetic_Datum_1996|||
TWD97|3824 3823|TWD_1997||Taiwan Datum 1997||
SIRGAS-Chile 2002|5360 5359|SIRGAS-Chile||SIRGAS-Chile realization 1 epoch 2002||
SIRGAS-ROU98|5381 5380|SIRGAS-ROU98|||+ellps=WGS84 +towgs84=0,0,0|
S-JTSK/05|5228|S_JTSK/05|S_JTSK_05|System of the Unified Trigonometrical Cadastral Network/05|+ellps=bessel +towgs84=572.213,85.334,461.94,4.9732,1.529,5.2484,3.5378|1.0
SIRGAS-Chile 2010|8949 8948|SIRGAS-Chile_2010|SIRGAS-Chile_realization_2_epoch_2010|||
SIRGAS-Chile 2013|9148 9147|SIRGAS-Chile_2013|SIRGAS-Chile_realization_3_epoch_2013|||
SIRGAS-Chile 2016|9153 9152|SIRGAS-Chile_2016|SIRGAS-Chile_realization_4_epoch_2016|||
CH1903+|4150|CH1903+|||+ellps=bessel +towgs84=674.374,15.056,405.346|1.0
GGRS87|4121|GGRS_1987||Greek Geodetic Reference System 1987|+ellps=GRS80 +towgs84=-199.87,74.79,246.62|1.0
Hong Kong 1980|4611|Hong_Kong_1980|||+ellps=intl +towgs84=-162.619,-276.959,-161.764,0.067753,-2.243648,-1.158828,-1.094246|1.0
Albanian 1987|4191|Albanian_1987|||+ellps=krass +towgs84=-44.183,-0.58,-38.489,2.3867,2.7072,-3.5196,-8.2703|1.0
ISN93|4659 4945|ISN_1993|Islands_Network_1993|Islands Net 1993||
LKS92|4661 4949|LKS_1992|Latvia_1992|||
EST97|4180 4935|Estonia_1997||||
LKS94|4669 4951|LKS_1994|Lithuania_1994|Lithuania 1994 (ETRS89)||
SVY21|4757|SVY21|||+ellps=WGS84 +towgs84=0,0,0|
MOLDREF99|4023 4017|MOLDREF99||||
CR05|5365 5364|CR05|Costa_Rica_2005||+ellps=WGS84 +towgs84=0,0,0|
RGAF09|5489 5488 7085 7086|RGAF09|Reseau_Geodesique_des_Antilles_Francaises_2009|||
TGD2005|5886 5885|TGD2005|Tonga_Geodetic_Datum_2005|||
CGRS93|6311 6310|CGRS_1993|Cyprus_Geodetic_Reference_System_1993||+ellps=WGS84 +towgs84=8.846,-4.394,-1.122,-0.00237,-0.146528,0.130428,0.783926|1.0
SRB_ETRS89|8685 8684||Serbian_Spatial_Reference_System_2000|||
KOSOVAREF01|9140 9139||Kosovo_Reference_System_2001|||
`;
